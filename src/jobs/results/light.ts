import { z } from 'zod';
import type { Judgement } from '#craft/light/judgement.ts';
import { pinNumber, pointResult, rounded, roundedPoint } from './numbers.ts';

const measured = (about: string) => z.number().nullable().describe(about);

/** What `pinlight light --json` prints. */
export const lightResult = z.strictObject({
  missing: z.array(pinNumber).describe('Pins without a hole.'),
  extra: z
    .array(z.strictObject({ x_mm: z.number(), y_mm: z.number(), diameter: z.number() }))
    .describe('Holes that the pattern does not have, in mm on the pattern.'),
  offCentre: z.array(pinNumber).describe('Pins whose hole is too far from its place.'),
  oval: z.array(pinNumber).describe('Pins whose hole is oval.'),
  large: z.array(pinNumber).describe('Pins whose hole is too wide.'),
  unseen: z.array(pinNumber).describe('Pins that the photo does not show; nothing is said of them.'),
  pins: z
    .array(
      z.strictObject({
        index: pinNumber,
        verdict: z.enum(['good', 'missing', 'off-centre', 'oval', 'large', 'unseen']),
        dx: measured('From the pin to its hole, mm to the right; null where no hole is seen, as below.'),
        dy: measured('And down.'),
        aspect: measured('Longest by shortest diameter, the tilt of the camera taken out.'),
        angle: measured('Of the longest diameter, degrees clockwise from x, -90 to 90.'),
        lean: measured(
          'How far the needle leant, degrees; null for a round hole or where the thickness of the card is not known.',
        ),
        diameter: measured('Millimetres.'),
      }),
    )
    .describe('Every pin of the pattern, in its order.'),
  zones: z
    .array(
      z.strictObject({
        across: z.enum(['left', 'middle', 'right']),
        down: z.enum(['top', 'middle', 'bottom']),
        holes: z.int(),
        aspect: z.number(),
        angle: z.number().describe('Of the longest diameter, degrees clockwise from x, seen from the front.'),
        towards: pointResult
          .nullable()
          .describe(
            'The step of length 1 that way that the holes have strayed: null where that is not clear.',
          ),
        lean: z.number().nullable().describe('Degrees; null where the thickness of the card is not known.'),
      }),
    )
    .describe('Parts of the card in which the needle leant one way.'),
  fit: z.strictObject({
    rms: z
      .number()
      .describe(
        'Root mean square of dx and of dy over the holes in place, mm: mostly the unsteadiness of the hand.',
      ),
    mirrored: z.boolean().describe('Whether the photo shows the back of the card.'),
    pairs: z.int(),
    homography: z
      .array(z.number())
      .length(9)
      .describe('Row by row: carries mm on the pattern to pixels, before the lens bends them.'),
    k1: z
      .number()
      .describe('With r the distance from the middle in half diagonals: r becomes r (1 + k1 r^2).'),
    pixelsPerMm: z.number(),
    holeDiameter: z.number().describe('Of most holes, mm.'),
    holes: z.enum(['light', 'dark']).describe('Light holes in a dark card, or dark ones in a light card.'),
    ambiguous: z.boolean().describe('Whether the pattern lies on the holes in another way as well.'),
  }),
  notes: z.array(z.string()).describe('What a person should know, in words.'),
});

export type LightResult = z.infer<typeof lightResult>;

export function toLightResult(judgement: Judgement, notes: readonly string[]): LightResult {
  const { fit } = judgement;
  const round = (value: number | null): number | null => (value === null ? null : rounded(value));
  return {
    missing: [...judgement.missing],
    extra: judgement.extra.map(({ x, y, diameter }) => ({
      x_mm: rounded(x),
      y_mm: rounded(y),
      diameter: rounded(diameter),
    })),
    offCentre: [...judgement.offCentre],
    oval: [...judgement.oval],
    large: [...judgement.large],
    unseen: [...judgement.unseen],
    pins: judgement.pins.map(({ index, verdict, ...pin }) => ({
      index,
      verdict,
      dx: round(pin.dx),
      dy: round(pin.dy),
      aspect: round(pin.aspect),
      angle: round(pin.angle),
      lean: round(pin.lean),
      diameter: round(pin.diameter),
    })),
    zones: judgement.zones.map(({ across, down, holes, aspect, angle, towards, lean }) => ({
      across,
      down,
      holes,
      aspect: rounded(aspect),
      angle: rounded(angle),
      towards: towards && roundedPoint(towards),
      lean: round(lean),
    })),
    fit: {
      rms: rounded(fit.rms),
      mirrored: fit.mirrored,
      pairs: fit.pairs,
      homography: [...fit.camera.homography],
      k1: fit.camera.k1,
      pixelsPerMm: rounded(fit.pixelsPerMm),
      holeDiameter: rounded(fit.holeDiameter),
      holes: fit.holes,
      ambiguous: judgement.notes.some(({ kind }) => kind === 'ambiguous'),
    },
    notes: [...notes],
  };
}

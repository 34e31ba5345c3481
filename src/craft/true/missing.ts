import { mirrored } from '#base/fit/symmetry.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import type { MissingPin } from '#pattern/structure.ts';
import { movedBy } from './copies.ts';
import { type Field, pinsWithin } from './field.ts';
import type { TrueMirror } from './mirror.ts';
import type { Copies } from './repeats.ts';
import type { TrueRun } from './runs.ts';
import type { Ask, Witness } from './witness.ts';

/** A pin this part of a spacing from an empty place fills it, whatever it belongs to. */
export const FILLED = 0.5;

export const LEAST_CONFIDENCE = 0.5;

/** In a crowded pattern some pin stands near any place: how often one does by chance, and where a copy is meant. */
const BY_CHANCE = 0.38;
const WHERE_MEANT = 0.96;

/** A first belief, weighed with what the copies say (Bayes): a pin found there speaks for it a little, none against it much. */
export function weigh(belief: number, { yes, no }: Witness): number {
  const forIt = (WHERE_MEANT / BY_CHANCE) ** yes;
  const against = ((1 - WHERE_MEANT) / (1 - BY_CHANCE)) ** no;
  const odds = (belief / (1 - belief)) * forIt * against;
  return Math.min(0.99, odds / (1 + odds));
}

/** The gaps in even runs that no other pin fills. */
export function missingInRun(field: Field, { chain, fit }: TrueRun, id: string, ask: Ask): MissingPin[] {
  return fit.gaps.flatMap(({ after, place }) => {
    const before = fit.places[after]!;
    const next = fit.places[(after + 1) % fit.places.length]!;
    const spacing = (distance(before, place) + distance(place, next)) / 2;
    const sides = chain.closed ? 3 : Math.min(after + 1, chain.pins.length - after - 1);
    const witness = ask(place, 0.4 * spacing);
    const first = sides < 2 ? 0.4 : sides < 3 ? 0.6 : fit.isStraight ? 0.92 : 0.78;
    const confidence = weigh(first, witness);
    if (confidence < LEAST_CONFIDENCE || pinsWithin(field, place, 0.62 * spacing).length > 0) return [];
    return [{ ...place, confidence, structure: id, why: 'run' as const }];
  });
}

/** Pins that the other copies of a track have and this copy lacks. */
export function missingInCopies(
  field: Field,
  { motion, tracks }: Copies,
  folded: Folded,
  id: string,
  ask: Ask,
): MissingPin[] {
  const copies =
    motion.kind === 'turn' ? motion.order : 1 + Math.max(...tracks.map((track) => Math.max(...track.keys())));
  const lacking = tracks.flatMap((track) => {
    if (track.size < LEAST_COPIES) return [];
    const [known, pin] = track.entries().next().value!;
    const at = folded.get(pin)!.place;
    return Array.from({ length: copies }, (_, copy) => copy).flatMap((copy): MissingPin[] => {
      if (track.has(copy)) return [];
      const place = movedBy(motion, copy - known, at);
      if (pinsWithin(field, place, FILLED * field.spacing).length > 0) return [];
      if (!isAmongPins(field, place)) return [];
      const confidence = weigh(0.3, ask(place, 0.4 * field.spacing));
      if (confidence < LEAST_CONFIDENCE) return [];
      const why = motion.kind === 'turn' ? ('symmetry' as const) : ('repeat' as const);
      return [{ ...place, confidence, structure: id, why }];
    });
  });
  return onlyFew(field, lacking);
}

/** The images of loose pins that have none, where nothing else stands; other pins have nearer fellows to ask. */
export function missingInMirror(
  field: Field,
  mirror: TrueMirror,
  isLoose: (pin: number) => boolean,
  id: string,
  ask: Ask,
): MissingPin[] {
  if (mirror.alone.length > MOST_ALONE * field.pins.length) return [];
  const lacking = mirror.alone.filter(isLoose).flatMap((pin): MissingPin[] => {
    const place = mirrored(mirror, field.pins[pin]!);
    if (pinsWithin(field, place, FILLED * field.spacing).length > 0 || !isAmongPins(field, place)) return [];
    const confidence = weigh(IN_MIRROR, ask(place, 0.4 * field.spacing));
    return confidence < LEAST_CONFIDENCE ? [] : [{ ...place, confidence, structure: id, why: 'symmetry' }];
  });
  return onlyFew(field, lacking);
}

/** Where more of the pins than this have no image, the two halves differ on purpose. */
const MOST_ALONE = 0.03;
/** The first belief that a pin without an image lacks one; its own standing is a witness besides. */
const IN_MIRROR = 0.4;

/** Many lacking side by side were not forgotten: there the pattern ends, or one copy differs on purpose. */
const onlyFew = (field: Field, lacking: readonly MissingPin[]): MissingPin[] =>
  lacking.filter(
    (one) =>
      lacking.filter((other) => distance(one, other) < SIDE_BY_SIDE * field.spacing).length <= MOST_LACKING,
  );

/** More lacking pins side by side than this were left out on purpose. */
export const MOST_LACKING = 2;
const SIDE_BY_SIDE = 2;

type Folded = ReadonlyMap<number, { readonly place: Point }>;

const LEAST_COPIES = 2;

/** Whether pins stand on all sides of a place or along a line through it, so that the pattern does not just end there. */
export function isAmongPins(field: Field, place: Point): boolean {
  const around = pinsWithin(field, place, 2.2 * field.spacing).map((pin) => field.pins[pin]!);
  return around.some((one) =>
    around.some((other) => {
      const dot = (one.x - place.x) * (other.x - place.x) + (one.y - place.y) * (other.y - place.y);
      return dot < -0.3 * distance(one, place) * distance(other, place);
    }),
  );
}

/** One proposal a place: the surest of those that mean the same pin. */
export function withoutTwins(missing: readonly MissingPin[], spacing: number): MissingPin[] {
  const kept: MissingPin[] = [];
  for (const one of missing.toSorted((p, q) => q.confidence - p.confidence)) {
    if (kept.every((other) => distance(one, other) > 0.6 * spacing)) kept.push(one);
  }
  return kept;
}

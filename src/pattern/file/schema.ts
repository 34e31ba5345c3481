import { z } from 'zod';
import { recipeSchema } from '../recipe/recipe.ts';
import {
  MAX_AREAS,
  MAX_COORDINATE,
  MAX_DPI,
  MAX_ID_LENGTH,
  MAX_LINE_LENGTH,
  MAX_MARKS,
  MAX_NOTES_LENGTH,
  MAX_PATH,
  MAX_PICTURE_SIDE,
  MAX_PINS,
  MAX_REPEATS,
  MAX_RUNS,
  MIN_LENGTH,
} from './limits.ts';

/**
 * The shape of a pattern file of the present version. What a shape cannot say (ids used once, references that resolve) is
 * checked in `references.ts`. The published JSON Schema is written from this.
 */

/** Says of a JSON file that it is one of ours. */
export const FORMAT = 'pinlight-pattern';

/** The version that this program writes, and the newest that it reads. */
export const VERSION = 2;

const coordinate = z.number().min(-MAX_COORDINATE).max(MAX_COORDINATE);
const measure = z.number().min(MIN_LENGTH).max(MAX_COORDINATE);
const line = z.string().max(MAX_LINE_LENGTH);

// Starts with a letter or digit, so that no id can be `__proto__`.
export const idSchema = z
  .string()
  .max(MAX_ID_LENGTH)
  .regex(/^[A-Za-z0-9][A-Za-z0-9._:-]*$/);

export const pointSchema = z.strictObject({ x: coordinate, y: coordinate });

const anchor = z
  .union([z.strictObject({ pin: idSchema }), pointSchema])
  .describe('At a pin, so that it moves with it: {"pin": "p1"}; or at a place of its own: {"x": 1, "y": 2}.');
const path = z.array(anchor).min(2).max(MAX_PATH);

const ownId = idSchema.exactOptional().describe('Given by place in the file where absent.');

const doubt = z.enum([
  'faint',
  'small',
  'large',
  'oval',
  'crossing',
  'line-end',
  'in-thick-line',
  'in-text',
  'speck',
  'touching',
  'edge',
]);

export const pinSchema = z.strictObject({
  id: ownId,
  x: coordinate.describe('To the right, in the unit of the file.'),
  y: coordinate.describe('Down the sheet, in the unit of the file.'),
  diameter: measure.exactOptional().describe('Measured or wanted diameter of the dot or hole, mm.'),
  confidence: z
    .number()
    .min(0)
    .max(1)
    .exactOptional()
    .describe('How sure the finder was; absent where a person placed the pin.'),
  doubt: z.array(doubt).max(20).exactOptional().describe('Why the pin is doubtful.'),
});

export const runSchema = z.strictObject({
  id: ownId,
  pins: z.array(idSchema).min(2).max(MAX_PATH).describe('Ids of the pins, in order along the line or curve.'),
  shape: z.enum(['line', 'curve']),
  closed: z.boolean().default(false).describe('Whether the last pin is followed by the first.'),
  role: z.enum(['footside', 'headside', 'outline', 'trail-edge', 'centre', 'other']).default('other'),
  even: z.boolean().default(false).describe('Whether the pins are meant to stand at even distances.'),
});

export const markSchema = z.discriminatedUnion('kind', [
  z.strictObject({ id: ownId, kind: z.literal('line'), from: anchor, to: anchor }),
  z.strictObject({
    id: ownId,
    kind: z.literal('gimp'),
    path,
    closed: z.boolean().default(false),
    width: measure.exactOptional().describe('Thickness of the drawn line, mm.'),
  }),
  z.strictObject({ id: ownId, kind: z.literal('plait'), path }),
  z.strictObject({
    id: ownId,
    kind: z.literal('picot'),
    at: anchor,
    side: z.enum(['left', 'right']).exactOptional(),
  }),
  z.strictObject({
    id: ownId,
    kind: z.literal('arrow'),
    from: anchor,
    to: anchor,
    label: line.exactOptional(),
  }),
  z.strictObject({ id: ownId, kind: z.literal('number'), at: anchor, value: z.int().min(-1e6).max(1e6) }),
  z.strictObject({
    id: ownId,
    kind: z.literal('text'),
    at: anchor,
    text: line,
    height: measure.describe('Height of a capital letter, mm.'),
  }),
]);

export const areaSchema = z.strictObject({
  id: ownId,
  outline: z.array(anchor).min(3).max(MAX_PATH).describe('Corners; closed from the last to the first.'),
  stitch: z.enum(['cloth', 'half', 'whole', 'ground', 'filling', 'other']).exactOptional(),
  name: line.exactOptional().describe("The maker's own word for the stitch or filling."),
  tint: z
    .string()
    .regex(/^#[0-9a-f]{6}$/)
    .exactOptional()
    .describe('Red, green and blue as #rrggbb in lower case.'),
});

export const unitSchema = z.enum(['mm', 'px']);

export const aboutSchema = z.strictObject({
  name: line.exactOptional(),
  maker: line.exactOptional(),
  source: line.exactOptional().describe('Where the pattern comes from: a book, a sheet, an old card.'),
  permission: line.exactOptional().describe('What may be done with the pattern, and who said so.'),
  lace: line.exactOptional().describe("The kind of lace, in the maker's own word."),
  revision: line.exactOptional(),
  notes: z.string().max(MAX_NOTES_LENGTH).exactOptional(),
});

export const repeatSchema = z.strictObject({
  step: pointSchema.describe('From a pin to the same pin of the next repeat; not zero.'),
  count: z.int().min(1).max(MAX_REPEATS).exactOptional(),
});

export const sizesSchema = z.strictObject({
  pin: measure.exactOptional(),
  hole: measure.exactOptional(),
  cardThickness: measure.exactOptional(),
  footsideSpacing: measure.exactOptional(),
});

export const sheetSchema = z.strictObject({ width: measure, height: measure });

const dpi = z.number().min(MIN_LENGTH).max(MAX_DPI);

export const scaleSchema = z.discriminatedUnion('from', [
  z.strictObject({ from: z.literal('none') }),
  z.strictObject({ from: z.enum(['file', 'given']), dpi }),
  z.strictObject({ from: z.literal('span'), dpi, length: measure }),
  z.strictObject({ from: z.literal('drafted') }),
]);

const side = z.int().min(1).max(MAX_PICTURE_SIDE);

/** Names that a file in a container may have: no folders, nothing that a disk or a screen could take amiss. */
export const ENTRY_NAME = /^[A-Za-z0-9][A-Za-z0-9._-]*$/;

export const entrySchema = z.string().max(MAX_ID_LENGTH).regex(ENTRY_NAME);

export const hashSchema = z.string().regex(/^[0-9a-f]{64}$/);

export const paperSchema = z.strictObject({
  entry: entrySchema.describe("Name of the picture's entry in the container."),
  sha256: hashSchema.describe("SHA-256 of the picture's bytes."),
  width: side.describe('Pixels, in the picture as a person sees it upright.'),
  height: side,
  toPattern: z
    .strictObject({
      a: coordinate,
      b: coordinate,
      c: coordinate,
      d: coordinate,
      e: coordinate,
      f: coordinate,
    })
    .describe('Pixels to the unit of the file: x = a column + c row + e, y = b column + d row + f.'),
  stood: z
    .record(idSchema, pointSchema)
    .exactOptional()
    .describe('Where each pin stood on the paper before it was straightened, by pin id.'),
});

/** A file of the present version. `format` and `version` may be left out of a file written by hand. */
export const fileSchema = z
  .strictObject({
    format: z.literal(FORMAT).exactOptional(),
    version: z.literal(VERSION).exactOptional(),
    unit: unitSchema
      .default('mm')
      .describe("Millimetres; or pixels of the paper's picture while nobody knows its scale."),
    about: aboutSchema.default({}),
    pins: z.array(pinSchema).max(MAX_PINS).describe('In the order of the file; results refer to it.'),
    runs: z.array(runSchema).max(MAX_RUNS).default([]),
    marks: z.array(markSchema).max(MAX_MARKS).default([]),
    areas: z.array(areaSchema).max(MAX_AREAS).default([]),
    repeat: repeatSchema.exactOptional(),
    sizes: sizesSchema.default({}).describe('Sizes chosen for the making, mm.'),
    sheet: sheetSchema.exactOptional().describe('Frame of the sheet, from its origin.'),
    scale: scaleSchema.default({ from: 'none' }).describe('How the size of the pattern is known.'),
    paper: paperSchema.exactOptional().describe("The paper's own picture, and how it lies under the pins."),
    recipe: recipeSchema.exactOptional().describe('From which figures the pattern was drafted.'),
  })
  .meta({ title: 'Pinlight pattern' });

export type PatternFile = z.output<typeof fileSchema>;
export type PaperFile = z.output<typeof paperSchema>;

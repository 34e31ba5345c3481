import { applyAffine } from '#base/geometry/affine.ts';
import type { Point } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import { testCoupon } from '#paper/cut/coupon.ts';
import { type CutDrawing, linesIn } from '#paper/cut/drawing.ts';
import { holeSize } from '#paper/cut/hole-size.ts';
import { type CuttingJob, cuttingJob } from '#paper/cut/job.ts';
import { framed } from '#paper/cut/move.ts';
import { type CutNote, type CutOptions, type CutTrouble, isOverBed } from '#paper/cut/options.ts';
import { splitDrawing } from '#paper/cut/split.ts';
import { travelOf } from '#paper/cut/travel.ts';
import type { Sheet } from '#paper/sheet/sheet.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { orderFor } from './order.ts';
import { layOnPaper } from './print-then-cut.ts';
import type { CutWish } from './wish.ts';
import { powerIsGuessed, writeCutting } from './write.ts';

/** One file for a machine. */
export interface CutFile {
  readonly kind: 'card' | 'part' | 'film' | 'coupon';
  /** Behind the name that was asked for: '' for the card itself, '-a1' for a part. */
  readonly suffix: string;
  readonly text: string;
  readonly width: number;
  readonly height: number;
  readonly holes: number;
  /** Centre of the first hole as the file has it (y up in DXF and G-code), mm; null where it has none. */
  readonly first: Point | null;
  /** From hole to hole, mm. */
  readonly travel: number;
}

/** Something to know beside the files, of the drawing or of how it was asked for. */
export type CuttingNote =
  | CutNote
  | { readonly kind: 'ask-for-kerf' }
  | { readonly kind: 'power-guessed' }
  | { readonly kind: 'ref-not-in-gcode' }
  | { readonly kind: 'split-not-needed' };

export interface CutPattern {
  readonly job: CuttingJob;
  readonly files: readonly CutFile[];
  /** The sheet that is printed first, where it was asked for. */
  readonly sheet: Sheet | null;
  readonly kerf: number;
  readonly notes: readonly CuttingNote[];
}

/** A pattern as files for a laser, a drill or a plotter. */
export function cutPattern(pattern: Pattern, wish: CutWish): Result<CutPattern, CutTrouble> {
  const options = optionsOf(pattern, wish);
  const laid = cuttingJob(pattern, options);
  if (!laid.ok) return laid;
  if (wish.only && Object.keys(laid.value.card.layers).length === 0) {
    return failed({ kind: 'cut-nothing-left', layers: wish.only });
  }
  const placed = wish.printOn ? layOnPaper(pattern, laid.value, wish.printOn, wish.typeface) : null;
  if (placed && !placed.ok) return placed;
  const { job, sheet } = placed?.value ?? {
    job: { ...laid.value, card: framed(laid.value.card) },
    sheet: null,
  };
  const bed = wish.bed ?? wish.preset?.bed;
  const tooLarge = bed !== undefined && isOverBed(job.card, bed);
  const file = (kind: CutFile['kind'], suffix: string, drawing: CutDrawing): CutFile =>
    cutFile(kind, suffix, drawing, pattern, wish);
  const files: CutFile[] = [];
  if (wish.split && tooLarge) {
    const parts = splitDrawing(laid.value.card, bed, wish.typeface);
    if (!parts.ok) return failed(parts.trouble);
    for (const { name, drawing } of parts.value) files.push(file('part', `-${name.toLowerCase()}`, drawing));
  } else files.push(file('card', '', job.card));
  if (job.film) files.push(file('film', '-film', job.film));
  if (wish.coupon) files.push(file('coupon', '-coupon', testCoupon(job.drawn).drawing));
  const notes: CuttingNote[] = [...job.notes];
  if (tooLarge && !wish.split) {
    notes.push({ kind: 'over-bed', width: job.card.width, height: job.card.height, bed });
  }
  if (wish.kerf === undefined && wish.preset?.kerf === undefined) notes.push({ kind: 'ask-for-kerf' });
  if (powerIsGuessed(wish)) notes.push({ kind: 'power-guessed' });
  if (wish.format === 'gcode' && options.ref) notes.push({ kind: 'ref-not-in-gcode' });
  if (wish.split && !tooLarge) notes.push({ kind: 'split-not-needed' });
  return done({ job, files, sheet, kerf: options.kerf, notes });
}

function optionsOf({ sizes }: Pattern, wish: CutWish): CutOptions {
  const { preset, only } = wish;
  const hole = wish.hole ?? (wish.pin === undefined ? sizes.hole : undefined);
  const pin = wish.pin ?? sizes.pin;
  return {
    typeface: wish.typeface,
    hole: holeSize({ ...(hole !== undefined && { hole }), ...(pin !== undefined && { pin }) }),
    kerf: wish.kerf ?? preset?.kerf ?? 0,
    cardThickness: wish.cardThickness ?? sizes.cardThickness ?? preset?.cardThickness ?? CARD,
    order: orderFor(wish.spread === undefined ? (preset?.spread ?? null) : wish.spread),
    ...(wish.card && { card: wish.card }),
    film: wish.film ?? false,
    engrave: wish.engrave ?? false,
    ref: (wish.ref ?? false) || (wish.split ?? false) || wish.printOn !== undefined,
    mirror: wish.mirror ?? false,
    ...(only && { only: [...only, ...(wish.split || wish.printOn ? (['REF'] as const) : [])] }),
  };
}

/** Thickness of pricking card where nobody says it, mm (from memory; measure yours). */
const CARD = 0.4;

function cutFile(
  kind: CutFile['kind'],
  suffix: string,
  drawing: CutDrawing,
  { about }: Pattern,
  wish: CutWish,
): CutFile {
  const isUp = wish.format !== 'svg';
  const centres = linesIn(drawing, 'HOLES').flatMap((line) => (line.kind === 'circle' ? [line.at] : []));
  const upward = { a: 1, b: 0, c: 0, d: -1, e: 0, f: drawing.height };
  const [first] = centres;
  return {
    kind,
    suffix,
    text: writeCutting(drawing, about, wish),
    width: drawing.width,
    height: drawing.height,
    holes: centres.length,
    first: first ? (isUp ? applyAffine(upward, first) : first) : null,
    travel: travelOf(centres),
  };
}

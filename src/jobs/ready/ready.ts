import type { PixelPicture } from '#base/picture/warp.ts';
import type { Progress } from '#base/progress.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { Finding } from '#craft/look/finding.ts';
import { beforeAndAfterSheet } from '#paper/sheet/before-and-after.ts';
import type { PrintTrouble } from '#paper/sheet/options.ts';
import { type Sheet, sheetContext } from '#paper/sheet/sheet.ts';
import { summarySheets } from '#paper/sheet/summary.ts';
import type { Typeface } from '#paper/type/typeface.ts';
import type { PatternWithPictures } from '#pattern/container/container.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { look } from '../look.ts';
import { paperUnderDots } from '../print/paper-picture.ts';
import { sheetsToPdf } from '../print/pdf.ts';
import { type PrintedPattern, printPattern } from '../print/print.ts';
import { revisionOf } from '../revision.ts';
import type { ReadyTrouble, TrueTrouble } from '../trouble.ts';
import { usualChoice } from '../true/choice.ts';
import { straightenPattern, type Trued } from '../true/straighten.ts';
import { summaryInSections } from '../words/summary.ts';
import { type ReadyFile, readyFiles } from './files.ts';
import { leaveOutUnsure, type Weighed } from './weigh.ts';

/** What `ready` is made from: a pattern as it was traced or opened, and what is known of how it came about. */
export interface ReadyInput extends PatternWithPictures {
  /** What tracing said, in words; empty for a pattern that was opened. */
  readonly notes: readonly string[];
}

export interface ReadyWish {
  readonly typeface: Typeface;
  readonly paper: PaperSize;
  readonly film: 'blue' | 'grey' | 'none';
  /** Marks found with less confidence are left out. */
  readonly sure: number;
  /** Whether markings are drawn from the pattern, or are the paper's own where its picture is at hand. */
  readonly markings: 'drawn' | 'paper';
  /** The pixels of a picture file; null where they cannot be read. */
  readonly toPixels: (file: Uint8Array) => Promise<PixelPicture | null>;
  /** Makes a PNG picture of a sheet. */
  readonly toPng: (sheet: Sheet) => Promise<Uint8Array>;
}

/** Everything that was made, and what a door says of it. */
export interface Ready {
  readonly files: readonly ReadyFile[];
  readonly findings: readonly Finding[];
  readonly trued: Trued;
  readonly weighed: Weighed;
}

/** The whole job: straightened, looked over, printed both ways, with a picture of what moved and a summary in words. */
export async function makeReady(
  input: ReadyInput,
  wish: ReadyWish,
  progress: Progress,
): Promise<Result<Ready, ReadyTrouble | TrueTrouble | PrintTrouble>> {
  const weighed = leaveOutUnsure(input.pattern, wish.sure);
  if (weighed.pattern.pins.length === 0) return failed({ kind: 'nothing-to-prick' });
  if (input.pattern.unit === 'px') return failed({ kind: 'no-size', said: [...input.notes] });
  const trued = straightenPattern(weighed.pattern, {}, usualChoice, progress);
  if (!trued.ok) return trued;
  const { pattern } = trued.value;
  const { findings, regularity } = look(pattern, progress);
  const { typeface, paper, film } = wish;
  const picture = await paperPicture({ ...input, pattern }, wish, progress);
  const usual = { typeface, paper, regularity, ...(picture && { picture }) };
  const through = printPattern(pattern, { ...usual, way: 'through' }, progress);
  if (!through.ok) return through;
  const under = printPattern(pattern, { ...usual, way: 'film', film }, progress);
  if (!under.ok) return under;

  const context = sheetContext(pattern.about, { typeface, revision: revisionOf(pattern) });
  const sections = summaryInSections({
    input,
    weighed,
    trued: trued.value,
    findings,
    through: through.value,
    paper,
  });
  const before = beforeAndAfterSheet(context, paper, movesOf(weighed, trued.value));
  return done({
    findings,
    trued: trued.value,
    weighed,
    files: await readyFiles({
      input,
      trued: pattern,
      findings,
      sections,
      pdf: {
        summary: await pdfOf(summarySheets(context, paper, sections), typeface, 'Summary', null),
        before: await pdfOf([before], typeface, 'Before and after', null),
        through: await pdfOf(through.value.sheets, typeface, titleOf(pattern), pattern),
        film: await pdfOf(under.value.sheets, typeface, titleOf(pattern), pattern),
      },
      png: {
        before: await wish.toPng(before),
        film: await Promise.all(firstOf(under.value).map(wish.toPng)),
      },
    }),
  });
}

/** The paper's own picture under exact dots; null where it is not wanted or not at hand. */
async function paperPicture(
  { pattern, pictures }: PatternWithPictures,
  { markings, toPixels }: ReadyWish,
  progress: Progress,
) {
  const file = pattern.paper && pictures.get(pattern.paper.entry);
  if (!file || markings === 'drawn') return null;
  const pixels = await toPixels(file);
  const fits = pixels?.width === pattern.paper?.width && pixels?.height === pattern.paper?.height;
  return pixels && fits ? paperUnderDots(pattern, pixels, progress) : null;
}

const pdfOf = sheetsToPdf;

const firstOf = ({ previews }: PrintedPattern): readonly Sheet[] => previews.slice(0, 1);

const titleOf = ({ about }: Pattern): string => about.name ?? 'Lace pattern';

/** Marks that were left out are shown where they lie, as doubtful ones. */
function movesOf({ pattern, leftOut }: Weighed, { result }: Trued) {
  const places = result.pins.map(({ x, y }) => ({ x, y }));
  return {
    stood: [...pattern.pins, ...leftOut],
    now: [...places, ...leftOut],
    missing: result.missing,
    stray: result.stray,
    doubtful: leftOut.map((_, index) => pattern.pins.length + index),
  };
}

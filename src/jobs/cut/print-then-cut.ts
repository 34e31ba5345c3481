import { noFilm } from '#base/colour/film.ts';
import { applyAffine, compose } from '#base/geometry/affine.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { CuttingJob } from '#paper/cut/job.ts';
import { framed, placeDrawing } from '#paper/cut/move.ts';
import type { CutTrouble } from '#paper/cut/options.ts';
import { moveMark } from '#paper/drawing/move.ts';
import { drawPattern } from '#paper/ink/pattern-ink.ts';
import { frameOnPaper, printThenCutSheet } from '#paper/sheet/print-then-cut.ts';
import { type Sheet, sheetContext } from '#paper/sheet/sheet.ts';
import type { Typeface } from '#paper/type/typeface.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { revisionOf } from '../revision.ts';

/**
 * The job moved to where its frame lies on a sheet of paper, and that sheet: the file's frame is then the paper itself,
 * so that places in the print and in the file are the same numbers (y from the other end where it runs up).
 */
export function layOnPaper(
  pattern: Pattern,
  job: CuttingJob,
  paper: PaperSize,
  typeface: Typeface,
): Result<{ job: CuttingJob; sheet: Sheet }, CutTrouble> {
  const context = sheetContext(pattern.about, { typeface, revision: revisionOf(pattern) });
  const place = frameOnPaper(context, paper, job.card);
  if (!place) {
    const { name } = paper;
    return failed({
      kind: 'cut-paper-too-small',
      paper: name,
      width: job.card.width,
      height: job.card.height,
    });
  }
  const { toPaper } = place;
  const toFrame = compose(toPaper, job.toFrame);
  const ink = drawPattern(pattern, {
    typeface,
    hole: { mark: 'dot', diameter: job.hole },
    spread: 0,
    film: noFilm,
    line: 0.2,
  });
  const printed = [...ink.tints, ...ink.markings].map((mark) => moveMark(mark, toFrame));
  return done({
    job: {
      ...job,
      card: framed(placeDrawing(job.card, toPaper, place.paper)),
      film: job.film && placeDrawing(job.film, toPaper, place.paper),
      holes: job.holes.map((hole) => applyAffine(toPaper, hole)),
      targets: job.targets.map((target) => applyAffine(toPaper, target)),
      toFrame,
    },
    sheet: printThenCutSheet(context, place, printed, job.targets),
  });
}

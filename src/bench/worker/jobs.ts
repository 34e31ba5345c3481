import type { Point } from '#base/geometry/point.ts';
import type { Progress } from '#base/progress.ts';
import { areaAt } from '#craft/mark/area-at.ts';
import { boundsOf, type Reach } from '#craft/mark/bounds.ts';
import { arrangePattern } from '#jobs/arrange/arrange.ts';
import type { ArrangeStep } from '#jobs/arrange/steps.ts';
import { draftFile, draftRecipe } from '#jobs/draft/draft.ts';
import { draftFitting } from '#jobs/draft/fit.ts';
import type { RecipeSource } from '#jobs/draft/source.ts';
import { look } from '#jobs/look.ts';
import { routeByHand } from '#jobs/route.ts';
import type { KnownWords } from '#jobs/true/known.ts';
import { proposeTrue } from '#jobs/true/propose.ts';
import { changeBetween } from '#pattern/change/between.ts';
import { writeContainer } from '#pattern/container/container.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { backUp, bringBack } from './backup-jobs.ts';
import { bytesOf } from './bytes.ts';
import { draftPreview } from './draft-preview.ts';
import { lightJobs } from './light-jobs.ts';
import { makeJobs } from './make-jobs.ts';
import { open } from './open-job.ts';
import { paper, paperScale, trace } from './paper-jobs.ts';
import { size, sizeTable } from './size-jobs.ts';

/**
 * The heavy jobs, as they run beside the page. Each takes plain values, and last of all a `Progress`, and gives plain
 * values back.
 */
export const jobs = {
  /** Done once the jobs are loaded. */
  load: (_progress: Progress) => {},
  open,
  container: async (pattern: Pattern, pictures: ReadonlyMap<string, Blob>, _progress: Progress) =>
    writeContainer({ pattern, pictures: await bytesOf(pictures) }),
  backUp,
  bringBack,
  draftPreview,
  /** `fresh` is the path of a part that was just put in, and is made to fit. */
  draft: (source: RecipeSource, fresh: string | null, _progress: Progress) =>
    fresh === null ? draftRecipe(source, []) : draftFitting(source, fresh),
  arrange: (pattern: Pattern, steps: readonly ArrangeStep[], _progress: Progress) =>
    arrangePattern(pattern, steps),
  draftFile: (bytes: Uint8Array, _progress: Progress) => draftFile(bytes),
  paper,
  paperScale,
  trace,
  changeBetween: (before: Pattern, after: Pattern, _progress: Progress) => changeBetween(before, after),
  areaAt: (pattern: Pattern, reach: Reach, at: Point, _progress: Progress) =>
    areaAt(boundsOf(pattern, reach), at),
  look: (pattern: Pattern, progress: Progress) => look(pattern, progress),
  straighten: (pattern: Pattern, known: KnownWords, progress: Progress) =>
    proposeTrue(pattern, known, progress),
  ...makeJobs,
  ...lightJobs,
  routeByHand: (pattern: Pattern, progress: Progress) => routeByHand(pattern, progress),
  size,
  sizeTable,
};

export type Jobs = typeof jobs;

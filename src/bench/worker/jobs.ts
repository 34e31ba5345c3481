import type { Progress } from '#base/progress.ts';
import { look } from '#jobs/look.ts';
import type { Pattern } from '#pattern/pattern.ts';

/**
 * The heavy jobs, as they run beside the page. Each takes plain values and gives plain values back; one file a stage
 * may bring more (see `worker.ts`).
 */
export const jobs = {
  look: (pattern: Pattern, progress: Progress) => look(pattern, progress),
};

export type Jobs = typeof jobs;

import type { Progress } from '#base/progress.ts';
import { openToWork } from '#jobs/open.ts';

export const open = (bytes: Uint8Array, _progress: Progress) => openToWork(bytes);

import { rmSync } from 'node:fs';

/** Half-made files and folders that must go whatever happens. */
const unfinished = new Set<string>();

/**
 * Does work that leaves something half-made at `aside` while it lasts. Whether it comes to its end, fails or is
 * stopped from the keyboard, nothing is left there.
 */
export async function untidy(aside: string, work: () => Promise<void>): Promise<void> {
  unfinished.add(aside);
  try {
    await work();
  } finally {
    remove(aside);
  }
}

/** Ends the program when it is told to stop, with nothing half-made left behind. */
export function tidyUpWhenStopped(): void {
  for (const [signal, number] of [
    ['SIGINT', 2],
    ['SIGTERM', 15],
    ['SIGHUP', 1],
  ] as const) {
    process.once(signal, () => {
      for (const aside of unfinished) remove(aside);
      process.exit(128 + number);
    });
  }
}

function remove(aside: string): void {
  rmSync(aside, { recursive: true, force: true });
  unfinished.delete(aside);
}

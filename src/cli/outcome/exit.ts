/** What a verb leaves behind for a script to read. */
export const EXIT = {
  /** The work is done. */
  done: 0,
  /** The work is done, and the pattern has faults. */
  faults: 1,
  /** The input or the command is no good; nothing was written. */
  refused: 2,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

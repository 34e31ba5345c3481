/**
 * How long work says how far it is: `share` runs from 0 to 1 within the named stage.
 * A listener may throw to stop the work; nothing is written before a job is done, so nothing is left half-made.
 */
export type Progress = (stage: string, share: number) => void;

export const silent: Progress = () => {};

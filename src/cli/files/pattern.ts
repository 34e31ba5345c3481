import { openToWork } from '#jobs/open.ts';
import { CONTAINER_ENDING, type PatternWithPictures, writeContainer } from '#pattern/container/container.ts';
import { writePattern } from '#pattern/file/write.ts';
import { orRefuse } from '../outcome/refused.ts';
import { readInput } from './read.ts';

/** The pattern in a file, or on standard input for `-`. */
export async function openPattern(name: string): Promise<PatternWithPictures> {
  return orRefuse(openToWork(await readInput(name)), name);
}

/** A pattern as its file's name wants it: a container with the picture of the paper, or JSON alone without it. */
export function patternBytes(file: PatternWithPictures, name: string): Uint8Array | string {
  if (name.toLowerCase().endsWith(CONTAINER_ENDING)) return writeContainer(file);
  const { paper: _, ...alone } = file.pattern;
  return writePattern(alone);
}

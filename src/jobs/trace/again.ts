import type { Progress } from '#base/progress.ts';
import { done, type Result } from '#base/result.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { PictureIn } from '../picture/picture.ts';
import type { ScaleTrouble } from '../trouble.ts';
import type { Door } from '../words/door.ts';
import { scaleOfPaper } from './paper.ts';
import { type Traced, tracePicture } from './trace.ts';

/**
 * Finds the pins on the paper that a pattern has already, at the scale that it knows. The pins and marks that it had go;
 * whose it is, the sizes chosen for it, and its picture stay.
 */
export function traceAgain(
  pattern: Pattern,
  picture: PictureIn,
  progress: Progress,
  door: Door,
): Result<Traced, ScaleTrouble> {
  const known = scaleOfPaper(pattern);
  // Dots that are not square were told of when the paper came; its pins can be found all the same.
  const seen: PictureIn =
    picture.scale.kind === 'unequal' ? { ...picture, scale: { kind: 'none' } } : picture;
  const traced = tracePicture(seen, known && { kind: 'known', scale: known }, progress, door);
  if (!traced.ok) return traced;
  const { paper, ...found } = traced.value.pattern;
  const { about, sizes, paper: had } = pattern;
  const kept = paper && had ? { ...paper, entry: had.entry, sha256: had.sha256 } : paper;
  return done({ ...traced.value, pattern: { ...found, about, sizes, ...(kept && { paper: kept }) } });
}

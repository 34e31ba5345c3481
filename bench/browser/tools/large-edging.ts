import { seededRandom } from '#base/random.ts';
import { writePattern } from '#pattern/file/write.ts';
import { edging, jitter } from '../../../test/support/patterns/index.ts';

/** The file of an edging of 31,473 pins with its lines, pricked by hand. */
export const largeEdging = (): string =>
  writePattern(jitter(edging({ width: 61, repeats: 80 }), 0.15, seededRandom(3)).pattern);

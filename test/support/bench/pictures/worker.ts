import '../../../../src/bench/worker/policy.ts';
import { expose } from 'comlink';
import { readPixels } from '../../../../src/bench/worker/pictures/pixels.ts';
import { readPicture } from '../../../../src/bench/worker/pictures/read.ts';

/** What the bench's worker reads pictures with, as a worker of its own. */
const reading = {
  picture: (bytes: Uint8Array, name: string | null) => readPicture(bytes, name),
  pixels: (bytes: Uint8Array) => readPixels(bytes),
};

export type Reading = typeof reading;

expose(reading);

import { spawnSync } from 'node:child_process';
import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';

/**
 * Finds blobs in a raw grey file. `size` is what its script is told of the blobs: their diameter or the pixels a mm. The
 * time is that of the detector alone on one thread, the best of `rounds`.
 */
export type Peer = (
  file: string,
  picture: Pick<GreyPicture, 'width' | 'height'>,
  size: number,
  rounds: number,
) => { readonly places: readonly PixelPoint[]; readonly ms: number };

/** A script for OpenCV in Python as a peer, or null where Debian's python3-opencv is not installed. */
export function opencvPeer(script: string): Peer | null {
  const python = '/usr/bin/python3';
  if (spawnSync(python, ['-c', 'import cv2, numpy']).status !== 0) return null;
  return (file, { width, height }, size, rounds) => {
    const args = ['-c', script, file, String(width), String(height), String(size), String(rounds)];
    const run = spawnSync(python, args, { encoding: 'utf8', maxBuffer: 64e6 });
    if (run.status !== 0) throw new Error(run.stderr);
    return JSON.parse(run.stdout);
  };
}

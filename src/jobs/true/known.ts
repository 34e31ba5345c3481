import { done, failed, type Result } from '#base/result.ts';
import type { KnownTruth } from '#craft/true/index.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { pinIndex } from '#pattern/pins.ts';
import type { TrueTrouble } from '../trouble.ts';

/** What a person knows of the pattern before it was copied, in her own words. */
export interface KnownWords {
  /** Angle of the ground to the footside, degrees. */
  readonly angle?: number;
  /** Two pins, each by id or by place from 0, and their true distance, mm. */
  readonly distance?: { readonly from: string; readonly to: string; readonly length: number };
}

/** The same in the terms of the pattern's pins. */
export function knownOf(pattern: Pattern, { angle, distance }: KnownWords): Result<KnownTruth, TrueTrouble> {
  const trueAngle = angle === undefined ? {} : { trueAngle: (angle * Math.PI) / 180 };
  if (distance === undefined) return done(trueAngle);
  const index = pinIndex(pattern);
  const pinOf = (name: string) => index.get(name) ?? placeIn(pattern, name);
  const [from, to] = [pinOf(distance.from), pinOf(distance.to)];
  if (from === null || to === null) {
    return failed({ kind: 'unknown-pin', pin: from === null ? distance.from : distance.to });
  }
  const [a, b] = [pattern.pins[from]!, pattern.pins[to]!];
  if (a.x === b.x && a.y === b.y) return failed({ kind: 'same-pins', from: distance.from, to: distance.to });
  return done({ ...trueAngle, knownDistance: { from, to, length: distance.length } });
}

/** '12' is the thirteenth pin, where no pin bears that id. */
function placeIn({ pins }: Pattern, name: string): number | null {
  const place = /^\d{1,7}$/.test(name) ? Number(name) : pins.length;
  return place < pins.length ? place : null;
}

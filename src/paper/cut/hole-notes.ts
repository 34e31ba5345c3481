import type { Point } from '#base/geometry/point.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { openingOf } from './kerf.ts';
import type { CutNote, CutOptions } from './options.ts';
import { leastHole, leastWeb, MOST_WEBS, thinWebs } from './web.ts';

/** What is to be said of the holes: `kept` are the pins that got one, at `places`, drawn as circles of `drawn` mm. */
export function holeNotes(
  { pins }: Pattern,
  { hole, kerf, cardThickness }: CutOptions,
  kept: readonly number[],
  places: readonly Point[],
  drawn: number,
): CutNote[] {
  const least = leastWeb(cardThickness);
  const thin = thinWebs(places, openingOf(drawn, kerf), least);
  const ids = ({ holes: [one, other] }: (typeof thin)[number]): [string, string] => [
    pins[kept[one]!]!.id,
    pins[kept[other]!]!.id,
  ];
  const overlapping = thin.filter(({ card }) => card <= 0);
  const fragile = thin.slice(overlapping.length);
  const notes: CutNote[] = [];
  const doubtful = pins.filter(({ confidence }) => confidence !== undefined && confidence < SURE);
  if (doubtful.length) notes.push({ kind: 'pins-in-doubt', pins: doubtful.map(({ id }) => id) });
  if (drawn === 0) notes.push({ kind: 'points-for-holes', hole, kerf });
  if (kept.length < pins.length) notes.push({ kind: 'holes-merged', count: pins.length - kept.length });
  if (thin.length >= MOST_WEBS) notes.push({ kind: 'webs-not-all', most: MOST_WEBS });
  if (overlapping.length) notes.push({ kind: 'holes-overlap', pairs: overlapping.map(ids) });
  if (fragile[0]) {
    const thinnest = fragile[0];
    notes.push({
      kind: 'thin-web',
      pairs: fragile.length,
      thinnest: thinnest.card,
      least,
      pins: ids(thinnest),
    });
  }
  if (hole < leastHole(cardThickness))
    notes.push({ kind: 'small-hole', hole, least: leastHole(cardThickness) });
  return notes;
}

/** Pins found with less confidence than this are named before they are burnt into card. */
const SURE = 0.5;

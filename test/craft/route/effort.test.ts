import { expect, it } from 'vitest';
import { handEffort, usualPace } from '#craft/route/effort.ts';
import { handOrder } from '#craft/route/hand.ts';
import { diagonalStrip } from './regularities.ts';

it('counts holes, settings of the ruler, waxings and minutes', () => {
  const { pattern, regularity } = diagonalStrip(6, 16);
  const effort = handEffort(handOrder(pattern, regularity));
  // 96 holes on 11 or 12 columns: 24 waxings; 96 x 2 s + 12 x 15 s + 24 x 3 s = 444 s.
  expect(effort).toEqual({ holes: 96, settings: 12, waxings: 24, minutes: 8 });
});

it('needs nothing for nothing', () => {
  expect(handEffort({ passes: [] })).toEqual({ holes: 0, settings: 0, waxings: 0, minutes: 0 });
});

it('takes longer at a slower pace', () => {
  const { pattern, regularity } = diagonalStrip(6, 16);
  const order = handOrder(pattern, regularity);
  const slow = handEffort(order, { ...usualPace, secondsPerHole: 6 });
  expect(slow.minutes).toBeGreaterThan(handEffort(order).minutes);
});

import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';

/**
 * Groups places that stand together: each place joins the first earlier leader within reach, else leads itself. Leaders
 * are further apart than the reach, so that each place is met a few times at most, however many lie on one spot. The
 * leader comes first in its group; groups come in the order of their leaders.
 */
export function groupsWithin(places: readonly Point[], reach: number): number[][] {
  const index = new PointIndex(places);
  const joined = new Uint8Array(places.length);
  return places.flatMap((place, leader) => {
    if (joined[leader] === 1) return [];
    const group = index.within(place, reach).filter((at) => at > leader && joined[at] === 0);
    for (const at of group) joined[at] = 1;
    return [[leader, ...group.sort((one, other) => one - other)]];
  });
}

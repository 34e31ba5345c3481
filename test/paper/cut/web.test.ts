import { describe, expect, test } from 'vitest';
import { seededRandom } from '#base/random.ts';
import { withoutCoincident } from '#paper/cut/merge.ts';
import { leastHole, leastWeb, thinWebs, usualSpacing } from '#paper/cut/web.ts';

const row = (...xs: number[]) => xs.map((x) => ({ x, y: 0 }));

describe('the card between two holes', () => {
  test('is their distance less one hole as it comes out', () => {
    const webs = thinWebs(row(0, 1, 2.4), 0.6, 0.5);
    expect(webs.map(({ holes }) => holes)).toEqual([[0, 1]]);
    expect(webs[0]!.card).toBeCloseTo(0.4, 12);
  });

  test('exactly the least is enough', () => expect(thinWebs(row(0, 1.1), 0.6, 0.5)).toEqual([]));

  test('holes that touch or overlap have none or less', () => {
    expect(thinWebs(row(0, 0.6, 0.9), 0.6, 0.5).map(({ card }) => Math.round(card * 1000) / 1000)).toEqual([
      -0.3, 0, 0.3,
    ]);
  });

  test('the same pairs as looking at every pair, in a cloud', () => {
    const random = seededRandom(7);
    const cloud = Array.from({ length: 200 }, () => ({ x: 20 * random(), y: 20 * random() }));
    const slow = cloud.flatMap((a, i) =>
      cloud
        .slice(i + 1)
        .flatMap((b, k) => (Math.hypot(a.x - b.x, a.y - b.y) - 0.6 < 0.4985 ? [`${i} ${i + 1 + k}`] : [])),
    );
    expect(
      thinWebs(cloud, 0.6, 0.5)
        .map(({ holes }) => holes.join(' '))
        .sort(),
    ).toEqual(slow.sort());
  });

  // Published advice (cutlasercut.com): widths not less than the thickness (3 mm acrylic: 3 mm), nothing closer than 0.5 mm.
  test('the least web is the thickness, and never under 0.5 mm', () => {
    expect([leastWeb(3), leastWeb(0.4)]).toEqual([3, 0.5]);
    expect(leastHole(3)).toBe(1.5);
  });

  test('half of the holes keep the usual spacing', () => {
    expect(usualSpacing(row(0, 2, 4, 6, 8), 10)).toBe(2);
    expect(usualSpacing(row(0, 0.1, 4, 8, 12, 16), 10)).toBe(4);
  });
});

describe('holes that coincide', () => {
  test('under 0.01 mm apart they are one, the first of them', () =>
    expect(withoutCoincident(row(0, 0.009, 1, 1.011, 1))).toEqual([0, 2, 3]));

  test('each kept hole stands clear of every other', () => {
    const random = seededRandom(3);
    const cloud = Array.from({ length: 500 }, () => ({ x: 0.3 * random(), y: 0.3 * random() }));
    const kept = withoutCoincident(cloud);
    for (const [n, a] of kept.entries())
      for (const b of kept.slice(n + 1))
        expect(Math.hypot(cloud[a]!.x - cloud[b]!.x, cloud[a]!.y - cloud[b]!.y)).toBeGreaterThan(0.01);
  });
});

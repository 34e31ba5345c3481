import { describe, expect, it } from 'vitest';
import { seededRandom } from '#base/random.ts';
import { findHoles } from '#craft/trace/holes.ts';
import { canvas, disc, finished, strip } from './drawing.ts';

describe('findHoles', () => {
  it('finds a net of dots on crossing lines, and no dot where lines only cross', () => {
    const page = canvas(600, 600);
    const dots: { x: number; y: number }[] = [];
    for (let i = 0; i < 9; i++) {
      strip(page, 60 + i * 60, 40, 60 + i * 60, 560, 2.4);
      strip(page, 40, 60 + i * 60, 560, 60 + i * 60, 2.4);
      for (let j = 0; j < 9; j++) {
        if ((i + j) % 3 === 0) continue;
        const dot = { x: 60 + i * 60 + 0.3 * (i % 3), y: 60 + j * 60 + 0.2 * (j % 4) };
        dots.push(dot);
        disc(page, dot.x, dot.y, 3.6);
      }
    }
    const { holes, dotDiameter } = findHoles(finished(page, seededRandom(1)), { dpi: 300 });
    expect(dotDiameter).toBeCloseTo(7.2, 0);
    const sure = holes.filter((hole) => hole.confidence > 0.5);
    expect(sure).toHaveLength(dots.length);
    for (const dot of dots) {
      const off = Math.min(...sure.map((hole) => Math.hypot(hole.column - dot.x, hole.row - dot.y)));
      expect(off).toBeLessThan(0.3);
    }
  });

  it('finds nothing on a blank page', () => {
    expect(findHoles(finished(canvas(300, 300), seededRandom(2)))).toMatchObject({
      holes: [],
      dotDiameter: 0,
      notes: ['no-dots'],
    });
  });
});

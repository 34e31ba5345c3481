import { describe, expect, test } from 'vitest';
import { applyAffine } from '#base/geometry/affine.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import { drawnForOpening } from '#paper/cut/kerf.ts';
import { patternFromPins } from '#pattern/pins.ts';
import { blobs } from '../../paper/support/blobs.ts';
import { typeface } from '../../paper/support/fonts.ts';
import { holesOf, paper, print } from '../../paper/support/print.ts';
import { rasterise } from '../../paper/support/raster.ts';
import { describeWith } from '../../support/outside.ts';
import { edging } from '../../support/patterns/index.ts';
import { cut, lopsided } from './support.ts';

const pattern = lopsided();

/** Circles of one layer of an SVG file, y down. */
function circles(svg: string, layer: string): { at: Point; diameter: number }[] {
  const group = new RegExp(`<g id="${layer}"[^>]*>\\n([\\s\\S]*?)</g>`).exec(svg)?.[1] ?? '';
  return [...group.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="([\d.]+)"/g)].map(([, x, y, r]) => ({
    at: { x: Number(x), y: Number(y) },
    diameter: 2 * Number(r),
  }));
}

const svg = (wish: Parameters<typeof cut>[1]) => cut(pattern, { format: 'svg', hole: 0.6, kerf: 0, ...wish });

describe('the job', () => {
  test('every pin once, in the order of the holes', () => {
    const { job } = svg({});
    expect([...job.pins].sort((a, b) => a - b)).toEqual(pattern.pins.map((_, k) => k));
    job.pins.forEach((pin, k) => {
      expect(distance(applyAffine(job.toFrame, pattern.pins[pin]!), job.holes[k]!)).toBeLessThan(1e-9);
    });
  });

  test('the shortest way is shorter than the pattern\u2019s own order; spread heat keeps its distance', () => {
    const short = svg({}).files[0]!;
    const own = pattern.pins.reduce((sum, pin, k, all) => sum + (k ? distance(all[k - 1]!, pin) : 0), 0);
    expect(short.travel).toBeLessThan(own);
    const { holes } = svg({ spread: 5 }).job;
    const near = holes.filter((hole, k) => k > 0 && distance(holes[k - 1]!, hole) < 5);
    expect(near.length).toBeLessThan(holes.length / 20);
  });

  test('is mirrored only where that is asked for', () => {
    const { width } = svg({}).files[0]!;
    const [plain, mirrored] = [svg({}), svg({ mirror: true })].map(({ files }) =>
      circles(files[0]!.text, 'HOLES').map(({ at }) => at),
    );
    const flipped = mirrored!.map(({ x, y }) => ({ x: width - x, y }));
    for (const at of flipped) expect(Math.min(...plain!.map((one) => distance(one, at)))).toBeLessThan(0.001);
    for (const side of [plain!, mirrored!]) expect(Math.min(...side.map(({ x }) => x))).toBeCloseTo(0.3, 4);
    expect(mirrored!.some((at) => plain!.every((one) => distance(one, at) > 0.5))).toBe(true);
  });

  test('files of single layers share one frame', () => {
    const wish = { card: { margin: 8 } };
    const [whole, holes, outline] = [undefined, ['HOLES'], ['OUTLINE']].map(
      (only) => svg({ ...wish, ...(only && { only: only as ['HOLES'] }) }).files[0]!,
    );
    expect([holes!.width, outline!.width]).toEqual([whole!.width, whole!.width]);
    expect(whole!.text).toContain(/<g id="HOLES"[\s\S]*?<\/g>/.exec(holes!.text)![0]);
    expect(whole!.text).toContain(/<g id="OUTLINE"[\s\S]*?<\/g>/.exec(outline!.text)![0]);
    expect(holes!.text).not.toContain('OUTLINE');
    expect(outline!.text).not.toContain('HOLES');
  });

  test('film has a file of its own in the frame of the card\u2019s', () => {
    const { files } = svg({ card: { margin: 10 }, film: true });
    expect(files.map(({ kind, suffix }) => [kind, suffix])).toEqual([
      ['card', ''],
      ['film', '-film'],
    ]);
    expect(files[1]!.width).toBe(files[0]!.width);
    expect(files[1]!.text).toMatch(/<g id="OUTLINE"[^>]*>\n<path d="M17\.0000 0\.0000/);
  });

  test('coincident pins get one hole', () => {
    const doubled = {
      ...pattern,
      pins: [...pattern.pins, { id: 'again', x: pattern.pins[5]!.x + 0.004, y: pattern.pins[5]!.y }],
    };
    const { job, notes } = cut(doubled, { hole: 0.6 });
    expect(job.holes).toHaveLength(pattern.pins.length);
    expect(notes).toContainEqual({ kind: 'holes-merged', count: 1 });
  });

  test('lines that are there twice are engraved once', () => {
    const [one, other] = [{ pin: pattern.pins[0]!.id }, { pin: pattern.pins[1]!.id }];
    const marks = [
      { id: 'a', kind: 'line', from: one, to: other },
      { id: 'b', kind: 'line', from: other, to: one },
    ] as const;
    const { files, notes } = cut({ ...pattern, marks }, { format: 'svg', engrave: true });
    expect(notes).toContainEqual({ kind: 'lines-merged', count: 1 });
    expect(
      /<g id="ENGRAVE"[^>]*>\n([\s\S]*?)<\/g>/.exec(files[0]!.text)![1]!.trim().split('\n'),
    ).toHaveLength(1);
  });

  test('pins in doubt are named', () => {
    const [first, ...rest] = pattern.pins;
    const { notes } = cut({ ...pattern, pins: [{ ...first!, confidence: 0.2 }, ...rest] });
    expect(notes).toContainEqual({ kind: 'pins-in-doubt', pins: [first!.id] });
  });

  test('one hole finer than the kerf still has room', () => {
    const { files } = cut(patternFromPins([{ x: 3, y: 4 }]), { format: 'svg', hole: 0.2, kerf: 0.2 });
    expect(files[0]!.text).toContain('viewBox="0 0 0.1000 0.1000"');
    expect(files[0]!.text).toContain('M0.0000 0.0500L0.1000 0.0500');
  });

  test('one pin, and pins on one line', () => {
    for (const places of [
      [{ x: 3, y: 4 }],
      [
        { x: 0, y: 0 },
        { x: 5, y: 0 },
        { x: 9, y: 0 },
      ],
    ]) {
      const { files } = cut(patternFromPins(places), { hole: 0.6, kerf: 0 });
      expect(files[0]!.holes).toBe(places.length);
      expect(files[0]!.height).toBeCloseTo(0.6, 9);
    }
  });
});

describe('the test coupon', () => {
  test('is five rows of five, each row larger than the last, about the hole that the job draws', () => {
    for (const [hole, kerf] of [
      [0.5, 0],
      [0.6, 0.15],
      [0.3, 0.3],
    ] as const) {
      const coupon = svg({ hole, kerf, coupon: true }).files.find(({ kind }) => kind === 'coupon')!;
      const holes = circles(coupon.text, 'HOLES');
      expect(holes).toHaveLength(25);
      const sizes = [...new Set(holes.map(({ diameter }) => diameter.toFixed(3)))]
        .map(Number)
        .sort((a, b) => a - b);
      expect(sizes).toHaveLength(5);
      expect(sizes[0]).toBeGreaterThan(0);
      if (drawnForOpening(hole, kerf) > 0.15) expect(sizes[2]).toBeCloseTo(drawnForOpening(hole, kerf), 3);
      for (const size of sizes)
        expect(holes.filter(({ diameter }) => Math.abs(diameter - size) < 1e-3)).toHaveLength(5);
    }
  });
});

describe('parts for a small bed', () => {
  const { pattern: large } = edging({ repeats: 6, spacing: 5 });
  const bed = { width: 70, height: 90 };
  const { files, job } = cut(large, {
    format: 'svg',
    hole: 0.6,
    kerf: 0,
    card: { margin: 10 },
    engrave: true,
    bed,
    split: true,
  });

  test('fit on it and hold every hole exactly once', () => {
    expect(files.length).toBeGreaterThan(3);
    for (const { text, width, height, holes } of files) {
      expect(width).toBeLessThanOrEqual(bed.width + 1e-6);
      expect(height).toBeLessThanOrEqual(bed.height + 1e-6);
      const inside = circles(text, 'HOLES').filter(
        ({ at: { x, y } }) => x > 0.3 && y > 0.3 && x < width - 0.3 && y < height - 0.3,
      );
      expect(inside).toHaveLength(holes);
    }
    expect(files.reduce((sum, { holes }) => sum + holes, 0)).toBe(job.holes.length);
  });

  test('lie on each other by their shared targets, and then every hole is in its place', () => {
    const parts = new Map(
      files.map(({ suffix, text }) => [
        suffix,
        { holes: circles(text, 'HOLES'), targets: circles(text, 'REF').map(({ at }) => at) },
      ]),
    );
    const laid = new Map<string, Point>([['-a1', { x: 0, y: 0 }]]);
    for (const suffix of parts.keys()) {
      if (suffix === '-a1') continue;
      const column = Number(suffix.slice(2));
      // The neighbour to the left, or above for the first of a row, and the way on which its seam lies.
      const [before, axis] =
        column > 1
          ? ([`${suffix.slice(0, 2)}${column - 1}`, 'x'] as const)
          : ([`-${String.fromCharCode(suffix.charCodeAt(1) - 1)}1`, 'y'] as const);
      const [theirs, ours] = [parts.get(before)!.targets, parts.get(suffix)!.targets];
      const last = Math.max(...theirs.map((at) => at[axis]));
      const first = Math.min(...ours.map((at) => at[axis]));
      const shared = theirs.filter((at) => last - at[axis] < 0.001);
      const same = ours.filter((at) => at[axis] - first < 0.001);
      expect(shared.length).toBeGreaterThanOrEqual(2);
      expect(same).toHaveLength(shared.length);
      const by = { x: shared[0]!.x - same[0]!.x, y: shared[0]!.y - same[0]!.y };
      shared.forEach(({ x, y }, k) => {
        expect(distance({ x: x - by.x, y: y - by.y }, same[k]!)).toBeLessThan(0.001);
      });
      const origin = laid.get(before)!;
      laid.set(suffix, { x: origin.x + by.x, y: origin.y + by.y });
    }
    const assembled = [...parts].flatMap(([suffix, { holes }]) => {
      const { x, y } = laid.get(suffix)!;
      return holes.map(({ at }) => ({ x: at.x + x, y: at.y + y }));
    });
    for (const hole of job.holes) {
      expect(Math.min(...assembled.map((at) => distance(at, hole)))).toBeLessThan(0.001);
    }
  });

  test('cut as much outline as the whole', () => {
    const lengthOf = (text: string): number => {
      const group = /<g id="OUTLINE"[^>]*>\n([\s\S]*?)<\/g>/.exec(text)?.[1] ?? '';
      return [...group.matchAll(/d="([^"]*)"/g)].reduce((sum, [, data]) => {
        const places = [...data!.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, x, y]) => ({
          x: Number(x),
          y: Number(y),
        }));
        const close = data!.endsWith('Z') ? distance(places.at(-1)!, places[0]!) : 0;
        return sum + close + places.reduce((way, to, k) => way + (k ? distance(places[k - 1]!, to) : 0), 0);
      }, 0);
    };
    const { width, height } = job.card;
    // Card in a border of 10 mm for targets, with corners of 10 mm radius.
    const round = 2 * (width - 20 + (height - 20)) - 80 + 20 * Math.PI;
    expect(Math.abs(files.reduce((sum, { text }) => sum + lengthOf(text), 0) - round)).toBeLessThan(0.1);
  });
});

describe('print, then cut', () => {
  const { files, job, sheet } = svg({ card: { margin: 10 }, printOn: paper('A4') });

  test('targets and frame have the same coordinates in the print and in the file', () => {
    const printed = sheet!.marks.flatMap((mark) =>
      mark.kind === 'ring' && mark.role === 'guide' ? [mark.at] : [],
    );
    expect(printed).toHaveLength(4);
    const inFile = circles(files[0]!.text, 'REF').map(({ at }) => at);
    expect(inFile).toHaveLength(4);
    for (const [k, target] of printed.entries()) {
      expect(distance(target, inFile[k]!)).toBeLessThan(0.0001);
      expect(distance(target, job.targets[k]!)).toBeLessThan(1e-9);
    }
    expect([files[0]!.width, files[0]!.height]).toEqual([sheet!.paper.width, sheet!.paper.height]);
  });

  describeWith(['pdftotext'], 'as poppler sees the PDF', () => {
    test('the targets lie where the file has them', async () => {
      const bare = {
        ...sheet!,
        marks: sheet!.marks.filter((mark) => mark.kind === 'ring' && mark.role === 'guide'),
      };
      const pdf = await sheetsToPdf([bare], typeface, 'Targets', null);
      const seen = await rasterise('poppler', pdf, 1, 600, bare.paper);
      const found = blobs(seen, { left: 0, top: 0, right: bare.paper.width, bottom: bare.paper.height });
      expect(found).toHaveLength(4);
      for (const { at } of circles(files[0]!.text, 'REF')) {
        expect(Math.min(...found.map(({ centre }) => distance(centre, at)))).toBeLessThan(0.02);
      }
    });
  });
});

describe('the cutting file and the printed dots of the same pattern', () => {
  test('differ by one shift only', () => {
    const [dots] = print(pattern).sheets;
    const printed = holesOf(dots!.marks).map((mark) =>
      'at' in mark ? mark.at : { x: Number.NaN, y: Number.NaN },
    );
    const cutHoles = circles(svg({}).files[0]!.text, 'HOLES').map(({ at }) => at);
    expect(cutHoles).toHaveLength(printed.length);
    const corner = (points: readonly Point[]): Point => ({
      x: Math.min(...points.map(({ x }) => x)),
      y: Math.min(...points.map(({ y }) => y)),
    });
    const [a, b] = [corner(printed), corner(cutHoles)];
    for (const { x, y } of printed) {
      const at = { x: x - a.x + b.x, y: y - a.y + b.y };
      expect(Math.min(...cutHoles.map((hole) => distance(hole, at)))).toBeLessThan(0.001);
    }
  });
});

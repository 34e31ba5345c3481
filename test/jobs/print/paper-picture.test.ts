import { describe, expect, it } from 'vitest';
import { applyAffine, invert, scaling } from '#base/geometry/affine.ts';
import { silent } from '#base/progress.ts';
import { seededRandom } from '#base/random.ts';
import { mmPerPixel } from '#base/units/length.ts';
import { paperUnderDots } from '#jobs/print/paper-picture.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { edging, jitter } from '../../support/patterns/index.ts';
import { greyOf, renderScan } from '../../support/scan/index.ts';

const known = jitter(edging({ repeats: 1 }), 0.15, seededRandom(3));
const scan = renderScan(known, { skew: 1, numbers: 0 }, seededRandom(4));
const pixel = mmPerPixel(300);
const pixels = { width: scan.width, height: scan.height, channels: 1 as const, bytes: greyOf(scan).grey };

/** The pattern as it was traced and straightened: pins stand where they belong, and stood where the dots are. */
const straightened: Pattern = {
  ...known.pattern,
  pins: known.pattern.pins.map((pin, k) => ({ ...pin, ...known.ideal[k]!, diameter: 0.6 })),
  paper: {
    entry: 'paper.jpg',
    sha256: '',
    width: scan.width,
    height: scan.height,
    toPattern: scaling(pixel),
    stood: Object.fromEntries(
      known.pattern.pins.map((pin, k) => {
        const { column, row } = scan.truth.holes[k]!;
        return [pin.id, { x: column * pixel, y: row * pixel }];
      }),
    ),
  },
};

describe("the paper's picture under exact dots", () => {
  it('has its dots where the straightened pins are', () => {
    const { picture, place } = paperUnderDots(straightened, pixels, silent)!;
    const toPixels = invert(place);
    const dark = straightened.pins.map((pin) => {
      const { x, y } = applyAffine(toPixels, pin);
      return picture.bytes[Math.round(y) * picture.width + Math.round(x)]!;
    });
    expect(Math.max(...dark)).toBeLessThan(120);
  });

  it('takes no control from a pin that was never on the paper', () => {
    const added = { id: 'added-1', x: known.ideal[0]!.x + 1.2, y: known.ideal[0]!.y + 1.2 };
    const more = { ...straightened, pins: [...straightened.pins, added] };
    const one = paperUnderDots(straightened, pixels, silent)!.picture;
    const other = paperUnderDots(more, pixels, silent)!.picture;
    expect(Buffer.from(other.bytes).equals(one.bytes)).toBe(true);
  });

  it('is not there without a picture or pins, and refuses another picture', () => {
    const { paper, ...bare } = straightened;
    expect(paper).toBeDefined();
    expect(paperUnderDots(bare, pixels, silent)).toBeNull();
    expect(paperUnderDots({ ...straightened, pins: [] }, pixels, silent)).toBeNull();
    expect(() => paperUnderDots(straightened, { ...pixels, width: 12 }, silent)).toThrow('12 x');
  });
});

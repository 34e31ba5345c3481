import { statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { rosehip } from './rosehip.ts';

describe('the example scan', () => {
  const file = fileURLToPath(new URL('../../../examples/rosehip-edging.jpg', import.meta.url));
  const { known, scan } = rosehip();

  it('is the picture that its recipe makes', async () => {
    const { data, info } = await sharp(file).raw().toBuffer({ resolveWithObject: true });
    expect({ width: info.width, height: info.height }).toEqual({ width: scan.width, height: scan.height });
    let off = 0;
    for (let k = 0; k < data.length; k++) off += Math.abs(data[k]! - scan.rgb[k]!);
    // JPEG at this quality changes a noisy picture by about two levels; another picture differs by far more.
    expect(off / data.length).toBeLessThan(4);
  });

  it('says its resolution and is an A5 sheet under a megabyte', async () => {
    const { density, width, height } = await sharp(file).metadata();
    expect({ density, width, height }).toEqual({ density: 300, width: 1748, height: 2480 });
    expect(statSync(file).size).toBeLessThan(1_000_000);
  });

  it('lacks three pins of the ground and shows all the others', () => {
    expect(known.omitted.map((pin) => pin.role)).toEqual(['ground', 'ground', 'ground']);
    expect(scan.truth.holes).toHaveLength(known.pattern.pins.length);
  });
});

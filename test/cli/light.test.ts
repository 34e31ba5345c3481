import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { seededRandom } from '#base/random.ts';
import lightSchema from '../../docs/schema/light.schema.json' with { type: 'json' };
import { photographCard } from '../support/card/index.ts';
import { pinlight, useCommand } from '../support/cli.ts';
import { edging, tape } from '../support/patterns/index.ts';

const { at } = useCommand();
const { pins } = edging({ repeats: 2 }).pattern;

describe('pinlight light', () => {
  const photo = photographCard(pins, { scene: 'window', turn: 30, tilt: 5, mirrored: true }, seededRandom(1));

  beforeAll(async () => {
    const { picture } = photo;
    await sharp(picture.grey, { raw: { width: picture.width, height: picture.height, channels: 1 } })
      .jpeg({ quality: 90 })
      .toFile(at('photo.jpg'));
    writeFileSync(at('pattern.json'), JSON.stringify({ unit: 'mm', pins }));
    writeFileSync(at('other.json'), JSON.stringify({ unit: 'mm', pins: tape().pattern.pins }));
    writeFileSync(at('pixels.json'), JSON.stringify({ unit: 'px', pins }));
  });

  test('--json: what the schema says, with the true faults, and exit code 1 for them', async () => {
    const run = await pinlight(['light', at('pattern.json'), at('photo.jpg'), '--json']);
    expect(run.code).toBe(1);
    const result = JSON.parse(run.out);
    const ajv = new Ajv2020({ strict: false });
    expect(ajv.validate(lightSchema, result), JSON.stringify(ajv.errors)).toBe(true);
    expect(result.missing).toEqual([...photo.card.faults.missing].sort((a, b) => a - b));
    expect(result.fit.mirrored).toBe(true);
    expect(result.pins).toHaveLength(pins.length);
  });

  test('in words, pins counted from 1, the same bytes each time', async () => {
    const words = ['light', at('pattern.json'), at('photo.jpg'), '--card-thickness', '0,4 mm'];
    const [first, second] = [await pinlight(words), await pinlight(words)];
    expect(first.out).toMatch(/^Held to the light: \d+ pins compared, seen from the back: 4 holes missing/u);
    expect(first.out).toContain(`pin ${photo.card.faults.missing[0]! + 1}: no hole`);
    expect(second.bytes.equals(first.bytes)).toBe(true);
  });

  test('-o: the card with its verdicts and a map true to scale, as PDF and as SVG files', async () => {
    const run = await pinlight([
      'light',
      at('pattern.json'),
      at('photo.jpg'),
      '-o',
      at('check.svg'),
      '--side',
      'back',
    ]);
    expect(run.code).toBe(1);
    expect(existsSync(at('check-card-picture.svg'))).toBe(true);
    const map = readFileSync(at('check-reprick-map-a1.svg'), 'utf8');
    expect(map).toContain('seen from the back');
    const pdf = await pinlight(['light', at('pattern.json'), at('photo.jpg'), '-o', at('check.pdf')]);
    expect(pdf.code).toBe(1);
    expect(readFileSync(at('check.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  });

  test('another pattern, and a pattern of no known size, are refused in words with exit code 2', async () => {
    const other = await pinlight(['light', at('other.json'), at('photo.jpg'), '--json']);
    expect(other.code).toBe(2);
    expect(other.out).toBe('');
    expect(other.err).toMatch(/Is it the pattern of this card\?|pattern of another card|too few to match/u);
    expect(other.err).toContain('Tried:');
    const unknown = await pinlight(['light', at('pixels.json'), at('photo.jpg')]);
    expect(unknown.code).toBe(2);
    expect(unknown.err).toContain('Nobody knows how large this pattern is');
  });
});

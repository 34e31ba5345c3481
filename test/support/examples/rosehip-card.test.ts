import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { judgeCard } from '#craft/light/judge.ts';
import { writePattern } from '#pattern/file/write.ts';
import { scoreOf } from '../card/index.ts';
import { rosehipCard, rosehipPattern } from './rosehip-card.ts';

const fileOf = (name: string) => fileURLToPath(new URL(`../../../examples/${name}`, import.meta.url));

describe('the example card', () => {
  it('is pricked from the pattern that lies beside it', () => {
    expect(readFileSync(fileOf('rosehip-edging.json'), 'utf8')).toBe(writePattern(rosehipPattern()));
  });

  it('shows every fault it was given, and no other', async () => {
    const { data, info } = await sharp(fileOf('rosehip-card.jpg'))
      .greyscale()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const picture = { width: info.width, height: info.height, grey: new Uint8Array(data) };
    const judged = judgeCard(picture, rosehipPattern().pins, { cardThickness: 0.4 });
    if (!judged.ok) throw new Error(judged.trouble.kind);
    const score = scoreOf(rosehipPattern().pins, rosehipCard(), judged.value);
    expect(score).toMatchObject({ right: 12, wrong: 0, overlooked: 0 });
    expect(score.placeError).toBeLessThan(0.05);
  });
});

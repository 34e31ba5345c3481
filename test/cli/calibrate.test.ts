import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { printerProfileSchema } from '#paper/calibrate/profile.ts';
import { pinlight, useCommand } from '../support/cli.ts';

const { at } = useCommand();

describe('pinlight calibrate', () => {
  test('a sheet, readings, a second print that proves them, and sheets put right', async () => {
    const sheet = await pinlight(['calibrate', '--sheet', at('sheet.pdf'), '--paper', 'A4']);
    expect(sheet.code, sheet.err).toBe(0);
    expect(readFileSync(at('sheet.pdf')).subarray(0, 5).toString()).toBe('%PDF-');

    // On A4 the line across is 170 mm and the one down 230 mm.
    const readings = [
      '--across',
      '170,2',
      '--down',
      '9 1/16 in',
      '--ink-spread',
      '0.1',
      '--date',
      '2026-03-14',
    ];
    const first = await pinlight(['calibrate', '--paper', 'A4', ...readings, '-o', at('kitchen.json')]);
    expect(first.code, first.err).toBe(0);
    const profile = printerProfileSchema.parse(JSON.parse(readFileSync(at('kitchen.json'), 'utf8')));
    expect(profile.x).toBeCloseTo(170 / 170.2, 9);
    expect(profile.y).toBeCloseTo(230 / (9.0625 * 25.4), 9);
    expect(profile).toMatchObject({ verified: false, inkSpread: 0.1, date: '2026-03-14' });

    const proof = ['calibrate', '--printer', at('kitchen.json'), '--across', '170.1', '--down', '230'];
    expect((await pinlight(proof)).err).toMatch(/is proved/);
    expect(JSON.parse(readFileSync(at('kitchen.json'), 'utf8')).verified).toBe(true);

    writeFileSync(
      at('pins.json'),
      JSON.stringify({
        pins: [
          { x: 10, y: 10 },
          { x: 90, y: 120 },
        ],
      }),
    );
    const print = ['print', at('pins.json'), '--way', 'through', '--paper', 'A4', '-o'];
    await pinlight([...print, at('plain.pdf')]);
    const corrected = await pinlight([...print, at('true.pdf'), '--printer', at('kitchen.json')]);
    expect(corrected.code, corrected.err).toBe(0);
    expect(readFileSync(at('true.pdf')).equals(readFileSync(at('plain.pdf')))).toBe(false);
  }, 120_000);

  test.each([
    [['--across', '164.1', '--down', '230'], /96\.5 %.*"actual size"/],
    [['--across', '170'], /--down is missing/],
    [['--across', 'long', '--down', '230'], /--across "long" is not understood/],
    [['--across', '170', '--down', '230', '--ink-spread', '2'], /0 to 0\.3 mm/],
    [['--across', '170', '--down', '230', '--date', 'today'], /--date "today" is not understood/],
  ])('%j is refused in words', async (args, words) => {
    const run = await pinlight(['calibrate', '--paper', 'A4', ...args]);
    expect(run.code).toBe(2);
    expect(run.err).toMatch(words);
    expect(run.out).toBe('');
  });

  test('what is no profile is refused', async () => {
    writeFileSync(at('other.json'), '{"pins":[]}');
    const run = await pinlight([
      'calibrate',
      '--printer',
      at('other.json'),
      '--across',
      '170',
      '--down',
      '230',
    ]);
    expect(run.code).toBe(2);
    expect(run.err).toMatch(/This is not the file of a measured printer\./);
  });
});

describe('files other than PDF', () => {
  test('are the same with and without a printer', async () => {
    writeFileSync(at('one.json'), '{"pins":[{"x":12.5,"y":30},{"x":20,"y":30}]}');
    const measured = ['--across', '169.5', '--down', '230.4', '--ink-spread', '0.1', '--date', '2026-11-25'];
    expect((await pinlight(['calibrate', '--paper', 'A4', ...measured, '-o', at('p.json')])).code).toBe(0);
    const print = (name: string, ...more: string[]) =>
      pinlight(['print', at('one.json'), '--way', 'through', '--paper', 'A4', '-o', at(name), ...more]);
    expect((await print('plain.svg')).code).toBe(0);
    expect((await print('corrected.svg', '--printer', at('p.json'))).code).toBe(0);
    const sheet = (name: string) => readFileSync(at(`${name}-dots-a1.svg`), 'utf8');
    expect(sheet('corrected')).toBe(sheet('plain'));
  });

  test('a test sheet is made for any paper that holds the rulers', async () => {
    const run = await pinlight(['calibrate', '--test', '--sheet', at('try.pdf'), '--paper', 'A5']);
    expect(run.code).toBe(0);
    expect(readFileSync(at('try.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  });
});

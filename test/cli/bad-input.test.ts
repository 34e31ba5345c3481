import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { zipSync } from 'fflate';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { pinlight, useCommand } from '../support/cli.ts';

const { folder, at } = useCommand();
const example = fileURLToPath(new URL('../../examples/rosehip-edging.jpg', import.meta.url));

const save = (name: string, content: string | Uint8Array): string => {
  writeFileSync(at(name), content);
  return at(name);
};

/** Runs a verb on a file that is no good: code 2, one sentence, nothing on standard output and nothing written. */
async function refused(verb: string, file: string, words: RegExp, options: { stdin?: string } = {}) {
  const before = readdirSync(folder).sort();
  const output = verb === 'look' ? [] : ['-o', at('out')];
  const run = await pinlight(
    [verb, file, ...output, ...(verb === 'print' ? ['--way', 'film', '--paper', 'A4'] : [])],
    {
      ...options,
      heap: 600,
    },
  );
  expect(run.code, run.err).toBe(2);
  expect(run.err).toMatch(words);
  expect(run.err.trim().split('\n')).toHaveLength(1);
  expect(run.err).not.toMatch(/\bat .*\.mjs|Error:|undefined|\[object/);
  expect(run.out).toBe('');
  expect(readdirSync(folder).sort()).toEqual(before);
}

describe('pictures that are none, or no good', () => {
  test('missing, a folder, empty, words', async () => {
    mkdirSync(at('drawer'));
    await refused('trace', at('nowhere.jpg'), /no such file/);
    await refused('trace', at('drawer'), /a folder/);
    await refused('trace', save('empty.jpg', ''), /empty/);
    await refused('ready', save('words.jpg', 'the pattern is in the other envelope'), /not JSON/);
    await refused('trace', save('words.png', 'the pattern is in the other envelope'), /no picture/);
    await refused('trace', save('page.jpg', '%PDF-1.7 …'), /a PDF/);
    await refused('ready', save('page.pdf', '%PDF-1.7 …'), /a PDF/);
  });

  test('broken off, or with more dots than there is room for', async () => {
    const whole = readFileSync(example);
    await refused('trace', save('half.jpg', whole.subarray(0, whole.length / 2)), /damaged or breaks off/);
    await refused('ready', save('half2.jpg', whole.subarray(0, whole.length / 2)), /damaged or breaks off/);
    const huge = await sharp({
      create: { width: 14_000, height: 14_000, channels: 3, background: '#fff' },
      limitInputPixels: false,
    })
      .png({ compressionLevel: 9 })
      .toBuffer();
    await refused('trace', save('huge.png', huge), /14000 by 14000 dots/);
  }, 120_000);

  test('an animation: the first frame, and a word about it', async () => {
    const { data, info } = await sharp(example).resize(874).raw().toBuffer({ resolveWithObject: true });
    const frames = Buffer.concat([data, Buffer.alloc(data.length, 255)]);
    const bytes = await sharp(frames, {
      raw: { width: info.width, height: info.height * 2, channels: 3, pageHeight: info.height },
    })
      .webp({ lossless: true, effort: 0 })
      .toBuffer();
    const run = await pinlight(['trace', save('moving.webp', bytes), '--json', '--dpi', '150']);
    expect(run.code, run.err).toBe(0);
    expect(run.err).toMatch(/2 pages or frames; only the first is read/);
    expect(JSON.parse(run.out).height).toBe(info.height);
  }, 120_000);

  test('a picture without dots: an honest empty result, and nothing to make ready', async () => {
    const blank = await sharp({ create: { width: 1200, height: 900, channels: 3, background: '#f4f0e6' } })
      .withMetadata({ density: 300 })
      .png()
      .toBuffer();
    const run = await pinlight(['trace', save('blank.png', blank), '--json']);
    expect(run.code).toBe(0);
    expect(JSON.parse(run.out)).toMatchObject({ holes: [], pins: [] });
    expect(run.err).toMatch(/No dots were found/);
    await refused('ready', at('blank.png'), /No pins were found/);
  });
});

describe('patterns that are none, or no good', () => {
  test.each([
    ['broken', '{"pins":[{"x":1,"y":2},]}', /line 1, column 24/],
    ['cut-off', '{"pins":[{"x":1,"y":', /ends too early/],
    ['newer', '{"format":"pinlight-pattern","version":99,"pins":[]}', /get a newer Pinlight/],
    ['not-a-number', '{"pins":[{"x":NaN,"y":2}]}', /not JSON/],
    ['endless', '{"pins":[{"x":1e999,"y":2}]}', /too large/],
    ['words', '{"pins":[{"x":"12","y":2}]}', /there should be a number/],
    ['deep', '['.repeat(100_000), /deep/],
    ['hostile', '{"pins":[{"x":1,"y":2,"\\u001b[2Jid":3}]}', /not a word of the pattern format/],
    ['array', '[1,2,3]', /not a pattern/],
    ['twice', '{"pins":[{"id":"a","x":1,"y":2},{"id":"a","x":3,"y":4}]}', /used twice/],
  ])(
    '%s',
    async (name, text, words) => {
      const file = save(`${name}.json`, text);
      for (const verb of ['look', 'ready']) await refused(verb, file, words);
    },
    120_000,
  );

  test('what is no text, or a container that breaks off', async () => {
    await refused('true', save('binary.json', Uint8Array.from([0xff, 0xfe, 0, 1, 2])), /not text/);
    const zip = zipSync({ 'pattern.json': new TextEncoder().encode('{"pins":[]}') });
    await refused('look', save('foreign.pinlight', zip), /missing from the file/);
    await refused('look', save('half.pinlight', zip.subarray(0, 40)), /damaged or cut off/);
  });

  test('a bomb: a container that would unpack to a gigabyte', async () => {
    const zip = zipSync({ 'paper.jpg': new Uint8Array(1_000_000_000) }, { level: 9 });
    await refused('look', save('bomb.pinlight', zip), /would unpack|missing from the file/);
  }, 120_000);

  test('no file at all on a device that never ends', async () => {
    if (process.platform !== 'linux') return;
    await refused('look', '/dev/zero', /larger than|too large/);
  }, 120_000);
});

describe('patterns that are odd, but honest', () => {
  test.each([
    ['none', []],
    ['one', [{ x: 10, y: 10 }]],
    ['on a line', Array.from({ length: 40 }, (_, i) => ({ x: 20 + 2 * i, y: 30 }))],
    ['on one spot', Array.from({ length: 40 }, () => ({ x: 20, y: 30 }))],
    ['in pairs', Array.from({ length: 40 }, (_, i) => ({ x: 20 + 4 * Math.floor(i / 2), y: 30 }))],
  ])(
    'pins: %s',
    async (name, pins) => {
      const file = save(`odd ${name}.json`, JSON.stringify({ pins }));
      const trued = await pinlight(['true', file, '--json']);
      expect(trued.code, trued.err).toBe(0);
      expect(JSON.parse(trued.out).pins).toHaveLength(pins.length);
      const looked = await pinlight(['look', file, '--json']);
      expect([0, 1], looked.err).toContain(looked.code);
      const printed = await pinlight(['print', file, '-o', at('odd.pdf'), '--way', 'film', '--paper', 'A4']);
      expect(printed.code, printed.err).toBe(pins.length === 0 ? 2 : 0);
    },
    120_000,
  );

  test('a million pins are refused or done in bounded time and memory', async () => {
    const pins = Array.from(
      { length: 1_000_000 },
      (_, i) => `{"x":${(i % 1000) * 2},"y":${Math.floor(i / 1000) * 2}}`,
    );
    const file = save('million.json', `{"pins":[${pins.join(',')}]}`);
    for (const verb of ['look', 'ready']) {
      await refused(verb, file, /1000000 pins/);
    }
  }, 240_000);
});

describe('hostile names', () => {
  const ESCAPE = '\u001b[31m\u001b]0;owned\u0007.json';

  test('nothing in a name reaches the terminal raw', async () => {
    for (const name of [
      ESCAPE,
      'a\nb\rc.json',
      `${'x'.repeat(250)}`,
      '\u202ecod.json',
      'no such \u009b31m',
    ]) {
      const run = await pinlight(['look', at(name)]);
      expect(run.code).toBe(2);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not come through
      expect(run.err).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
      expect(run.err.trim().split('\n')).toHaveLength(1);
      expect(run.err.length).toBeLessThan(300);
    }
    const option = await pinlight(['look', `--${ESCAPE}`]);
    expect(option.code).toBe(2);
    expect(option.err).not.toContain('\u001b');
  });

  test('a pattern with steering characters in its words prints them nowhere', async () => {
    const file = save(
      'steering.json',
      JSON.stringify({
        about: { name: '\u001b[2J\u202eevil', maker: '<script>alert(1)</script>' },
        pins: [{ x: 10, y: 10 }],
      }),
    );
    for (const args of [
      ['look', file],
      ['look', file, '--json'],
      ['true', file, '--json'],
    ]) {
      const run = await pinlight(args);
      for (const char of ['\u001b', '\u202e']) expect(run.out + run.err).not.toContain(char);
    }
    const svg = await pinlight([
      'print',
      file,
      '-o',
      at('steering.svg'),
      '--way',
      'film',
      '--paper',
      'A4',
      '--only',
      'A1',
    ]);
    expect(svg.code, svg.err).toBe(0);
    expect(readFileSync(at('steering.svg'), 'utf8')).not.toMatch(/<script/);
  });

  test('a dangling link is a missing file', async () => {
    symlinkSync(at('gone'), at('dangling.json'));
    await refused('look', at('dangling.json'), /no such file/);
  });
});

import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { isPictureName, readContainer, writeContainer } from '#pattern/container/container.ts';
import { openPattern } from '#pattern/container/open.ts';
import { sha256Hex } from '#pattern/container/sha256.ts';
import { roundPattern } from '#pattern/file/round.ts';
import { writePattern } from '#pattern/file/write.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { patternFromPins } from '#pattern/pins.ts';
import { arbitraryPattern } from '../support/arbitrary-pattern.ts';
import { describeWith } from '../support/outside.ts';

const picture = strToU8('not really a picture, but bytes all the same');
const paper = {
  entry: 'paper.jpg',
  sha256: sha256Hex(picture),
  width: 10,
  height: 10,
  toPattern: { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 },
};
const pattern: Pattern = { ...patternFromPins([{ x: 1, y: 2 }]), paper };
const pictures = new Map([['paper.jpg', picture]]);
const whole = writeContainer({ pattern, pictures });

const troubleOf = (bytes: Uint8Array) => {
  const read = readContainer(bytes);
  if (read.ok) throw new Error('opened');
  return read.trouble;
};
/** The container taken apart, changed by hand, and put together again. */
const tampered = (change: (files: Zippable) => void) => {
  const files: Zippable = unzipSync(whole);
  change(files);
  return zipSync(files);
};
const manifest = (...entries: object[]) =>
  strToU8(JSON.stringify({ format: 'pinlight-container', version: 1, entries }));
const listing = (name: string, bytes: Uint8Array) => ({ name, size: bytes.length, sha256: sha256Hex(bytes) });

describe('SHA-256', () => {
  // FIPS 180-4, the examples published with it by NIST.
  test.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ])('of "%s"', (text, hash) => {
    expect(sha256Hex(strToU8(text))).toBe(hash);
  });
  test('agrees with OpenSSL, as Node carries it', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(sha256Hex(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'));
      }),
      { seed: 1804 },
    );
  });
});

describe('a container', () => {
  test('gives back what was put in', () => {
    expect(readContainer(whole)).toEqual({ ok: true, value: { pattern, pictures } });
  });
  test('has the same bytes every time, in whatever order its pictures come', () => {
    const other = new Map([...pictures, ['b.png', picture] as const]);
    const turned = new Map([['b.png', picture], ...pictures] as const);
    expect(writeContainer({ pattern, pictures: other })).toEqual(
      writeContainer({ pattern, pictures: turned }),
    );
    expect(sha256Hex(whole)).toBe(sha256Hex(writeContainer({ pattern, pictures })));
  });
  test('carries any pattern and any bytes (seed 300)', () => {
    fc.assert(
      fc.property(arbitraryPattern(), fc.uint8Array({ maxLength: 100 }), (any, bytes) => {
        const { paper: _none, ...rest } = any;
        const held = { ...rest, ...(any.paper && { paper: { ...any.paper, sha256: sha256Hex(bytes) } }) };
        const files = new Map([['paper.jpg', bytes]]);
        const read = readContainer(writeContainer({ pattern: held, pictures: files }));
        expect(read).toEqual({ ok: true, value: { pattern: roundPattern(held), pictures: files } });
      }),
      { seed: 300, numRuns: 60 },
    );
  });
  test('may do without its picture, as JSON alone does', () => {
    const bytes = writeContainer({ pattern, pictures: new Map() });
    expect(readContainer(bytes)).toEqual({ ok: true, value: { pattern, pictures: new Map() } });
  });
  test('is not written with another picture, or under a name that cannot be read', () => {
    expect(() => writeContainer({ pattern, pictures: new Map([['paper.jpg', picture.slice(1)]]) })).toThrow(
      RangeError,
    );
    expect(() => writeContainer({ pattern, pictures: new Map([...pictures, ['../evil', picture]]) })).toThrow(
      RangeError,
    );
    expect(['manifest.json', 'pattern.json', 'a/b', '.hidden', ''].filter(isPictureName)).toEqual([]);
  });
});

// Info-ZIP's unzip, an independent reader, checks every entry against its CRC-32 and hands the bytes back.
describeWith(['unzip'], 'the container in another program', () => {
  let folder: string;
  let file: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'container-'));
    file = join(folder, 'pattern.pinlight');
    writeFileSync(file, whole);
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  test('is whole', () => {
    expect(execFileSync('unzip', ['-t', file], { encoding: 'utf8' })).toContain('No errors detected');
  });
  test('holds the picture byte for byte', () => {
    expect(new Uint8Array(execFileSync('unzip', ['-p', file, 'paper.jpg']))).toEqual(picture);
  });
});

describe('either kind of file is opened by its bytes', () => {
  test('a container and JSON, with or without a byte order mark', () => {
    const { paper: _none, ...bare } = pattern;
    const json = strToU8(writePattern(bare));
    expect(openPattern(whole)).toEqual({ ok: true, value: { pattern, pictures } });
    const opened = { ok: true, value: { pattern: bare, pictures: new Map() } };
    expect(openPattern(json)).toEqual(opened);
    expect(openPattern(new Uint8Array([0xef, 0xbb, 0xbf, ...json]))).toEqual(opened);
  });
  test.each([
    ['nothing', [], 'not-json'],
    ['a byte that is no UTF-8', [0x7b, 0xff], 'not-utf8'],
    ['UTF-16', [0xff, 0xfe, 0x7b, 0x00], 'not-utf8'],
    ['an overlong form', [0x22, 0xc0, 0xaf, 0x22], 'not-utf8'],
    ['half a pair in UTF-8', [0x22, 0xed, 0xa0, 0x80, 0x22], 'not-utf8'],
    ['the beginning of a zip', [0x50, 0x4b, 3, 4], 'damaged-zip'],
  ])('%s', (_name, bytes, kind) => {
    expect(openPattern(new Uint8Array(bytes))).toMatchObject({ ok: false, trouble: { kind } });
  });
});

test('a file too large for any text is not even decoded', () => {
  expect(openPattern(new Uint8Array(300_000_001))).toEqual({
    ok: false,
    trouble: { kind: 'too-large', what: 'bytes', size: 300_000_001, limit: 300_000_000 },
  });
});

describe('what is damaged or offered in bad faith', () => {
  test('cut off anywhere', () => {
    for (let length = 0; length < whole.length; length++) {
      expect(openPattern(whole.subarray(0, length)).ok).toBe(false);
    }
  });
  test('any one byte changed: refused, or nothing that counts has changed', () => {
    for (let at = 0; at < whole.length; at++) {
      const bytes = whole.slice();
      bytes[at]! ^= 0x21;
      const read = readContainer(bytes);
      if (read.ok) expect(read.value).toEqual({ pattern, pictures });
    }
  });
  test.each<[string, Uint8Array, object]>([
    [
      'a picture changed',
      tampered((files) => (files['paper.jpg'] = strToU8('other'))),
      { kind: 'damaged-entry', name: 'paper.jpg' },
    ],
    [
      'no list',
      tampered((files) => delete files['manifest.json']),
      { kind: 'missing-entry', name: 'manifest.json' },
    ],
    [
      'no pattern',
      tampered((files) => delete files['pattern.json']),
      { kind: 'missing-entry', name: 'pattern.json' },
    ],
    [
      'no picture',
      tampered((files) => delete files['paper.jpg']),
      { kind: 'missing-entry', name: 'paper.jpg' },
    ],
    [
      'one more',
      tampered((files) => (files['more.txt'] = picture)),
      { kind: 'unlisted-entry', name: 'more.txt' },
    ],
    [
      'a name with folders',
      tampered((files) => (files['../../evil'] = picture)),
      { kind: 'bad-entry-name', name: '../../evil' },
    ],
    [
      'a name of the prototype',
      zipSync({ a: [picture, {}], __proto__x: picture }),
      { kind: 'bad-entry-name', name: '__proto__x' },
    ],
    [
      'many files',
      zipSync(Object.fromEntries(Array.from({ length: 40 }, (_, i) => [`f${i}`, picture]))),
      { kind: 'too-many-entries', limit: 16 },
    ],
    [
      'a newer list',
      tampered((files) => (files['manifest.json'] = strToU8('{"version":7}'))),
      { kind: 'in-entry', name: 'manifest.json', trouble: { kind: 'newer-version', version: 7, newest: 1 } },
    ],
    [
      'a list that is none',
      tampered((files) => (files['manifest.json'] = strToU8('['))),
      {
        kind: 'in-entry',
        name: 'manifest.json',
        trouble: { kind: 'not-json', line: 1, column: 2, found: null },
      },
    ],
    [
      'a list twice over',
      tampered(
        (files) =>
          (files['manifest.json'] = manifest(listing('paper.jpg', picture), listing('paper.jpg', picture))),
      ),
      { kind: 'duplicate-entry', name: 'paper.jpg' },
    ],
    [
      'a broken pattern',
      zipSync({
        'manifest.json': manifest(listing('pattern.json', strToU8('{}'))),
        'pattern.json': strToU8('{}'),
      }),
      {
        kind: 'in-entry',
        name: 'pattern.json',
        trouble: { kind: 'wrong-shape', path: ['pins'], reason: { kind: 'missing' } },
      },
    ],
  ])('%s', (_name, bytes, expected) => {
    expect(troubleOf(bytes)).toEqual(expected);
  });

  test('a picture that is whole but another one', () => {
    const other = strToU8('another');
    const json = strToU8(writePattern(pattern));
    const bytes = zipSync({
      'manifest.json': manifest(listing('pattern.json', json), listing('paper.jpg', other)),
      'pattern.json': json,
      'paper.jpg': other,
    });
    expect(troubleOf(bytes)).toEqual({ kind: 'other-picture', name: 'paper.jpg' });
  });

  test('a name that is there twice', () => {
    const bytes = zipSync({ 'aaaa.jpg': [picture, { level: 0 }], 'aaab.jpg': [picture, { level: 0 }] });
    const text = Buffer.from(bytes).toString('latin1').replaceAll('aaab.jpg', 'aaaa.jpg');
    expect(troubleOf(Buffer.from(text, 'latin1'))).toEqual({ kind: 'duplicate-entry', name: 'aaaa.jpg' });
  });

  /** A zip of empty-looking files that claim these sizes. */
  const claiming = (...sizes: number[]) => {
    const names = sizes.map((_, i) => `file${i}.jpg`);
    const bytes = zipSync(Object.fromEntries(names.map((name) => [name, [picture, { level: 9 }]])));
    const view = new DataView(bytes.buffer);
    for (let at = 0; at + 46 < bytes.length; at++) {
      // The central directory header and the place of the unpacked size in it: APPNOTE.TXT 6.3.10, 4.3.12.
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, sizes.shift()!, true);
    }
    return bytes;
  };
  const mb = 1024 * 1024;

  test('what would unpack to more than memory should hold is not unpacked', () => {
    expect(troubleOf(claiming(300 * mb))).toEqual({
      kind: 'entry-too-large',
      name: 'file0.jpg',
      size: 300 * mb,
      limit: 256 * mb,
    });
  });

  test('a size that no deflate stream could reach, and one that is too small', () => {
    expect(troubleOf(claiming(100 * mb))).toEqual({ kind: 'damaged-entry', name: 'file0.jpg' });
    expect(troubleOf(claiming(3))).toEqual({ kind: 'missing-entry', name: 'manifest.json' });
  });

  test('many files that are large only together', () => {
    const bytes = claiming(200 * mb, 200 * mb, 200 * mb);
    const view = new DataView(bytes.buffer);
    for (let at = 0; at + 46 < bytes.length; at++) {
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 20, mb, true);
    }
    expect(troubleOf(bytes)).toEqual({
      kind: 'entry-too-large',
      name: 'file2.jpg',
      size: 200 * mb,
      limit: 112 * mb,
    });
  });

  test('four billion entries claimed in the longer directory of large zips', () => {
    // APPNOTE.TXT 6.3.10, 4.3.14 to 4.3.16: the record, its locator and the end, with no entries before them.
    const end = new Uint8Array(56 + 20 + 22);
    const view = new DataView(end.buffer);
    view.setUint32(0, 0x06064b50, true);
    view.setUint32(24, 0xffffffff, true);
    view.setUint32(32, 0xffffffff, true);
    view.setUint32(56, 0x07064b50, true);
    view.setUint32(76, 0x06054b50, true);
    view.setUint16(76 + 8, 0xffff, true);
    view.setUint16(76 + 10, 0xffff, true);
    view.setUint32(76 + 16, 0xffffffff, true);
    expect(readContainer(end).ok).toBe(false);
  });
});

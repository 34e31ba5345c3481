import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { pointsToMm } from '#base/units/length.ts';
import { layerNames } from '#paper/drawing/layer.ts';
import { writePdf } from '#paper/pdf/write.ts';
import { describeWith } from '../../support/outside.ts';
import { edging, fine } from '../../support/patterns/index.ts';
import { typeface } from '../support/fonts.ts';
import { holesOf, paper, plainOrder, print, stated } from '../support/print.ts';
import { inFolder } from '../support/raster.ts';

const known = fine();
const { sheets } = print(stated(known), { order: plainOrder(known), date: '25. listopadu 2026' });
const design = new TextEncoder().encode('{"pins":[{"x":12.5,"y":30}]}');
const attachments = [
  { name: 'pattern.json', type: 'application/json', description: 'The pattern', bytes: design },
];
const meta = { title: 'Größe Łódź Příliš őű — Ж Ωμέγα ½ <&>', author: 'Ottilie Brandwijk' };
const pdf = await writePdf(sheets, { typeface, meta, attachments });

describe('a PDF as pdf.js reads it', () => {
  const open = () => getDocument({ data: pdf.slice(), verbosity: 0 }).promise;

  test('asks for true scale in the print dialogue', async () => {
    // ISO 32000-1, table 150.
    const preferences = await (await open()).getViewerPreferences();
    expect(preferences).toMatchObject({ PrintScaling: 'None', PickTrayByPDFSize: true, Duplex: 'Simplex' });
  });

  test('has pages of exactly the paper, unturned, in plain points', async () => {
    const document = await open();
    expect(document.numPages).toBe(sheets.length);
    for (let number = 1; number <= document.numPages; number++) {
      const page = await document.getPage(number);
      const [left, bottom, right, top] = page.view;
      expect([left, bottom]).toEqual([0, 0]);
      expect(right).toBeCloseTo(595.2756, 4);
      expect(top).toBeCloseTo(841.8898, 4);
      expect([page.rotate, page.userUnit]).toEqual([0, 1]);
    }
  });

  test('Letter is 612 x 792 points', async () => {
    const letter = print(stated(known), { paper: paper('Letter') }).sheets;
    const data = await writePdf(letter, { typeface, meta });
    const page = await (await getDocument({ data, verbosity: 0 }).promise).getPage(1);
    expect(page.view).toEqual([0, 0, 612, 792]);
  });

  test('has layers that can be shown and hidden', async () => {
    const config = await (await open()).getOptionalContentConfig();
    const groups = [...(config as unknown as Iterable<[string, { name: string; visible: boolean }]>)];
    const names = groups.map(([, { name }]) => name);
    expect(names.sort()).toEqual(
      [layerNames.holes, layerNames.markings, layerNames.notes, layerNames.tints].sort(),
    );
    expect(groups.every(([, { visible }]) => visible)).toBe(true);
  });

  test('carries the pattern inside', async () => {
    const files = (await (await open()).getAttachments()) as Record<string, { content: Uint8Array }>;
    expect(Object.keys(files)).toEqual(['pattern.json']);
    expect([...files['pattern.json']!.content]).toEqual([...design]);
  });

  test('says on every page what it must', async () => {
    const document = await open();
    for (let number = 1; number <= document.numPages; number++) {
      const { items } = await (await document.getPage(number)).getTextContent();
      const text = items.map((item) => ('str' in item ? item.str : '')).join(' ');
      for (const words of [
        'measure me',
        'Ottilie Brandwijk',
        'her own draft',
        'may be copied for a class',
        'revision r1',
        '25. listopadu 2026',
        'A4',
        '100 %',
        'correction X 1.0000 Y 1.0000',
        `${number} of ${sheets.length}`,
      ]) {
        expect(text).toContain(words);
      }
      expect(text.match(/measure me/g)).toHaveLength(2);
    }
  });
});

describeWith(['pdftotext', 'qpdf'], 'a PDF as poppler and qpdf read it', () => {
  const withFile = <Value>(body: (file: string, folder: string) => Value): Value =>
    inFolder((folder) => {
      const file = join(folder, 'in.pdf');
      writeFileSync(file, pdf);
      return body(file, folder);
    });
  const run = (command: string, args: string[]): string =>
    execFileSync(command, args, { encoding: 'utf8', maxBuffer: 1 << 28 });

  test('is sound', () => {
    const words = withFile((file) => run('qpdf', ['--check', file]));
    expect(words).toContain('No syntax or stream encoding errors found');
  });

  test('holds its print settings as the standard names them, and no page unit or turn', () => {
    const plain = withFile((file) => run('qpdf', ['--qdf', '--object-streams=disable', file, '-']));
    expect(plain).toMatch(/\/PrintScaling \/None/);
    expect(plain).toMatch(/\/Enforce \[\s*\/PrintScaling\s*\]/);
    expect(plain).not.toMatch(/\/UserUnit|\/Rotate/);
  });

  test('embeds every font, in part', () => {
    const lines = withFile((file) => run('pdffonts', [file]))
      .trim()
      .split('\n')
      .slice(2);
    expect(lines.length).toBeGreaterThanOrEqual(2);
    for (const line of lines) expect(line).toMatch(/CID TrueType\s+Identity-H\s+yes yes yes/);
  });

  test('places every hole within 0.001 mm in the page itself', () => {
    const plain = withFile((file, folder) => {
      const out = join(folder, 'out.pdf');
      run('qpdf', ['--qdf', '--object-streams=disable', '--pages', file, '1', '--', file, out]);
      return readFileSync(out, 'latin1');
    });
    const places = [...plain.matchAll(/q 1 0 0 1 (\S+) (\S+) cm [^\n]* f Q/g)].map(([, x, y]) => ({
      x: pointsToMm(Number(x)),
      y: pointsToMm(Number(y)),
    }));
    const holes = holesOf(sheets[0]!.marks);
    expect(places.length).toBe(holes.length);
    holes.forEach((hole, k) => {
      if (hole.kind !== 'disc') throw new Error('not a dot');
      expect(Math.abs(places[k]!.x - hole.at.x)).toBeLessThan(0.001);
      expect(Math.abs(places[k]!.y - hole.at.y)).toBeLessThan(0.001);
    });
  });

  test('keeps letters from many languages, and borrows those its own font lacks', async () => {
    const words = 'Größe Łódź Příliš žluťoučký őű Ж Ωμέγα ½ ≤ ≥ → א';
    const pattern = stated(edging());
    const named = { ...pattern, about: { ...pattern.about, name: words } };
    const bytes = await writePdf(print(named).sheets, { typeface, meta });
    const text = inFolder((folder) => {
      const file = join(folder, 'in.pdf');
      writeFileSync(file, bytes);
      return run('pdftotext', ['-layout', file, '-']);
    });
    for (const word of words.split(' ')) expect(text).toContain(word);
  });
});

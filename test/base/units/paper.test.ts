import { execFileSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { mmToPoints } from '#base/units/length.ts';
import { paperNamed, paperSizes, turned } from '#base/units/paper.ts';
import { describeWith } from '../../support/outside.ts';

interface Published {
  readonly width: number;
  readonly height: number;
  readonly unit: 'mm' | 'in';
}

// The package ships sources that strict settings refuse, so its name is kept from the type checker.
const name: string = '@cityssm/paper-sizes';
const table: Readonly<Record<string, Published>> = (await import(name)).paperSpecifications;

describe('paper sizes', () => {
  // ISO 216, ISO 269 and ANSI/ASME Y14.1 as tabulated by npm @cityssm/paper-sizes 1.0.1, an independent list.
  test.each(paperSizes.map((size) => [size.name, size] as const))(
    '%s agrees with a published table',
    (name, size) => {
      const published = table[name.toUpperCase()];
      expect(published).toBeDefined();
      const factor = published!.unit === 'in' ? 25.4 : 1;
      const [short, long] = [published!.width * factor, published!.height * factor].sort((a, b) => a - b);
      expect(size.width).toBeCloseTo(short!, 9);
      expect(size.height).toBeCloseTo(long!, 9);
    },
  );

  // ReportLab's A4 in points (reportlab.lib.pagesizes).
  test('A4 in points', () => {
    const { width, height } = paperNamed('A4')!;
    expect(mmToPoints(width)).toBeCloseTo(595.2755905511812, 9);
    expect(mmToPoints(height)).toBeCloseTo(841.8897637795277, 9);
  });

  test('names are found whatever their capitals, spaces and dashes', () => {
    expect(paperNamed(' a4 ')?.name).toBe('A4');
    expect(paperNamed('US Letter')?.name).toBe('Letter');
    expect(paperNamed('ansi-b')?.name).toBe('Tabloid');
    expect(paperNamed('A44')).toBeUndefined();
    expect(paperNamed('')).toBeUndefined();
    expect(paperNamed('constructor')).toBeUndefined();
  });

  test('all sizes are upright, and turning twice changes nothing', () => {
    for (const size of paperSizes) {
      expect(size.width).toBeLessThanOrEqual(size.height);
      expect(turned(turned(size))).toEqual(size);
    }
  });
});

describeWith(['paperconf'], 'paper sizes against the system list of papers', () => {
  // Debian's libpaper: `paperconf -p NAME -s -m` prints width and height in mm.
  test.each(['A3', 'A4', 'A5', 'B4', 'B5', 'Letter', 'Legal', 'Tabloid'])('%s', (name) => {
    const words = execFileSync('paperconf', ['-p', name.toLowerCase(), '-s', '-m'], { encoding: 'utf8' });
    const [width, height] = [...words.matchAll(/([\d.]+) mm/g)].map(([, mm]) => Number(mm));
    const ours = paperNamed(name)!;
    expect(ours.width).toBeCloseTo(width!, 1);
    expect(ours.height).toBeCloseTo(height!, 1);
  });
});

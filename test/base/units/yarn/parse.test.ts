import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatYarn } from '#base/units/yarn/format.ts';
import { type LabelReading, parseYarn } from '#base/units/yarn/parse.ts';
import { countOfTex, isTicket, texOfCount, type YarnSystem, yarnSystems } from '#base/units/yarn/system.ts';
import { foldedYarn, plies, resultantTex, type Yarn } from '#base/units/yarn/yarn.ts';

function read(label: string, reading?: LabelReading): Yarn {
  const yarn = parseYarn(label, reading);
  if (!yarn.ok) throw new Error(`${label}: ${JSON.stringify(yarn.trouble)}`);
  return yarn.value;
}

const trouble = (label: string, reading?: LabelReading) => {
  const yarn = parseYarn(label, reading);
  return yarn.ok ? null : yarn.trouble;
};

describe('notations as makers write them', () => {
  test.each<[string, YarnSystem, number, number]>([
    ['Ne 80/2', 'Ne', 80, 2],
    ['80/2 Ne', 'Ne', 80, 2],
    ['80s/2 cotton count', 'Ne', 80, 2],
    ['2/80s cc', 'Ne', 80, 2],
    ['1/40 NeB', 'Ne', 40, 1],
    ["No. 40's Ne", 'Ne', 40, 1],
    ['80 Ne 2-ply', 'Ne', 80, 2],
    ['2 ply 80 Ne', 'Ne', 80, 2],
    ['80/2/3 Ne', 'Ne', 80, 6],
    ['Nm 60/2', 'Nm', 60, 2],
    ['nm60/2', 'Nm', 60, 2],
    ['80/2 NeL', 'NeL', 80, 2],
    ['linen lea 40', 'NeL', 40, 1],
    ['16 tex x 2', 'tex', 16, 2],
    ['tex 16×2', 'tex', 16, 2],
    ['2 x 16 tex', 'tex', 16, 2],
    ['69,3 tex', 'tex', 69.3, 1],
    ['120 den', 'den', 120, 1],
    ['210D', 'den', 210, 1],
    ['dtex 150x2', 'dtex', 150, 2],
    ['150 dtex f 48', 'dtex', 150, 1],
    ['70 den f 24 x 2', 'den', 70, 2],
    ['2/24 worsted', 'NeK', 24, 2],
    ['3360 yd/lb', 'yd/lb', 3360, 1],
    ['linen thread 80/2 NeL', 'NeL', 80, 2],
    ['cotton Ne 60/2', 'Ne', 60, 2],
    ['metric ticket 120', 'metric ticket', 120, 1],
  ])('%s', (label, system, count, strands) => {
    const yarn = read(label);
    expect(plies(yarn)).toBe(strands);
    expect(countOfTex(yarn.strands[0]!.tex, system)).toBeCloseTo(count, 9);
    expect(yarn.tex).toBeCloseTo(foldedYarn(system, count, strands).tex, 9);
    expect(yarn.system).toBe(system);
  });

  test('Nm 80/2 is 12.5 tex x 2 (tge-gmbh.de)', () => {
    expect(read('Nm 80/2').strands).toEqual([{ tex: 12.5, number: 2 }]);
  });

  test('8/2 cotton runs 3360 yards to the pound, 6.7734473 m to the gram', () => {
    expect(countOfTex(read('8/2 Ne').tex, 'yd/lb')).toBeCloseTo(3360, 9);
    expect(countOfTex(read('8/2 Ne').tex, 'Nm')).toBeCloseTo(6.7734473, 7);
  });

  test('strands unlike each other: 40s + 20s fold to 13 1/3, 40s + 80s + 120s to 21.8182 (C. P. Brooks)', () => {
    expect(countOfTex(read('40s + 20s Ne').tex, 'Ne')).toBeCloseTo(40 / 3, 9);
    // The book cuts 21.8182 off to 21.81.
    expect(countOfTex(read('Ne 40+80+120').tex, 'Ne')).toBeCloseTo(21.8182, 4);
    expect(countOfTex(read('2/80s Ne').tex, 'Ne')).toBeCloseTo(40, 9);
  });

  test('singles for a twofold of 16s that takes up a tenth: 35.2s (GATE 1992)', () => {
    const singles = countOfTex(texOfCount({ system: 'Ne', count: 16 }) / 2 / 1.1, 'Ne');
    expect(singles).toBeCloseTo(35.2, 9);
    const strands = foldedYarn('Ne', 35.2, 2).strands;
    expect(countOfTex(resultantTex(strands, 0.1), 'Ne')).toBeCloseTo(16, 9);
  });

  test('a bare number is read by the system given for it', () => {
    expect(read('80/2', { plain: 'NeL' }).tex).toBeCloseTo(read('NeL 80/2').tex, 12);
    expect(read('Ne 80/2', { plain: 'NeL' }).tex).toBeCloseTo(read('Ne 80/2').tex, 12);
  });
});

describe('the whole thread told on the label (ISO 1139, both ways of writing)', () => {
  test.each(['34 tex S600 x 2 Z400; R69.3 tex', 'R69.3 tex Z400/2 S600; 34 tex'])('%s', (label) => {
    expect(read(label)).toEqual({
      strands: [{ tex: 34, number: 2 }],
      tex: 69.3,
      resultantTold: true,
      system: 'tex',
    });
  });

  test('alone, it tells the strands as its parts', () => {
    expect(read('R70 tex/2').strands).toEqual([{ tex: 35, number: 2 }]);
    expect(read('R69.3 tex').tex).toBe(69.3);
  });

  test('strands and whole that cannot both be right', () => {
    expect(trouble('34 tex x 2; R120 tex')).toEqual({ kind: 'resultant-disagrees', told: 120, reckoned: 68 });
    expect(trouble('34 tex x 2; R60 tex')?.kind).toBe('resultant-disagrees');
  });
});

describe("silk's own habit", () => {
  test('old spun silk 60/2 runs as 60, two strands of 120 (C. P. Brooks: "30s/2 in silk will wrap 30s")', () => {
    const silk = read('spun silk 60/2');
    expect(countOfTex(silk.tex, 'Ne')).toBeCloseTo(60, 9);
    expect(countOfTex(silk.strands[0]!.tex, 'Ne')).toBeCloseTo(120, 9);
    expect(read('60/2 Ne', { habit: 'whole' }).tex).toBeCloseTo(silk.tex, 12);
    expect(read('60/2 Ne resultant').tex).toBeCloseTo(silk.tex, 12);
  });

  test('is never taken for granted: the same number elsewhere runs as 30', () => {
    expect(countOfTex(read('60/2 Ne').tex, 'Ne')).toBeCloseTo(30, 9);
    expect(countOfTex(read('60/2 Nm').tex, 'Nm')).toBeCloseTo(30, 9);
  });
});

describe('what cannot be understood', () => {
  test.each<[string, string]>([
    ['', 'empty'],
    ['   ', 'empty'],
    ['Ne', 'no-number'],
    ['0 tex', 'no-number'],
    ['80/2', 'no-system'],
    ['fine cotton', 'unknown-word'],
    ['cotton', 'no-number'],
    ['-80 Ne', 'unknown-word'],
    ['linen 80/2', 'no-system'],
    ['80/2 Nx', 'unknown-word'],
    ['Nm 80 Ne', 'two-systems'],
    ['1.234,5 tex', 'two-marks'],
    ['150/48 dtex', 'stroke'],
    ['20/22 den', 'stroke'],
    ['ticket 120', 'which-ticket'],
    ['metric ticket 120/2', 'ticket-strands'],
    ['80// Ne', 'not-a-fold'],
    [`Ne 80/2${' '.repeat(80)}/6`, 'not-a-fold'],
    ['80 2 Ne', 'not-a-fold'],
    ['80/1.5 Ne', 'not-a-fold'],
    ['R69 tex; R70 tex', 'not-a-fold'],
    ['34 tex; 35 tex; R70 tex', 'not-a-fold'],
    ['Ne 80/5000/2', 'strands-out-of-range'],
    ['0.001 tex', 'tex-out-of-range'],
    ['900000 tex', 'tex-out-of-range'],
  ])('"%s": %s', (label, kind) => {
    expect(trouble(label)?.kind).toBe(kind);
  });

  test('what is offered instead can be read, and is what could have been meant', () => {
    for (const label of [
      '80/2',
      'linen 80/2',
      '150/48 dtex',
      '20/22 den',
      'ticket 120',
      'metric ticket 120/2',
    ]) {
      const found = trouble(label);
      const works = found && 'works' in found ? found.works : [];
      expect(works.length).toBeGreaterThan(0);
      for (const work of works) read(work);
    }
    expect(trouble('20/22 den')).toMatchObject({ works: expect.arrayContaining(['21 den']) });
  });

  test('any text at all gives a thread or a trouble (seed 17)', () => {
    const bits = fc.constantFrom(
      '80',
      '2',
      '/',
      'x',
      '+',
      ';',
      'R',
      's',
      'tex',
      'Ne',
      'NeL',
      'den',
      ' ',
      ',',
      'ply',
      'f',
    );
    const label = fc.oneof(
      fc.string(),
      fc.array(bits).map((all) => all.join(' ')),
      fc.string({ unit: 'binary' }),
    );
    fc.assert(
      fc.property(label, (text) => {
        const yarn = parseYarn(text);
        if (yarn.ok) expect(yarn.value.tex).toBeGreaterThan(0);
        else expect(yarn.trouble.kind).toBeTruthy();
      }),
      { seed: 17, numRuns: 2000 },
    );
  });
});

test('what is written can be read, and is the same thread to three figures (seed 23)', () => {
  const systems = (Object.keys(yarnSystems) as YarnSystem[]).filter((system) => !isTicket(system));
  fc.assert(
    fc.property(
      fc.constantFrom(...systems),
      fc.double({ min: 3, max: 800, noNaN: true }),
      fc.integer({ min: 1, max: 12 }),
      fc.constantFrom('strand' as const, 'whole' as const),
      (system, tex, strands, habit) => {
        const yarn = foldedYarn(system, countOfTex(tex, system), strands, habit);
        // Where the strand's number is the smaller one the notation is the trade's own riddle: 4/6 is six fours or four sixes.
        const count = countOfTex(yarn.resultantTold ? yarn.tex : yarn.strands[0]!.tex, system);
        fc.pre(count > strands + 1);
        const again = read(formatYarn(yarn));
        expect(Math.abs(again.tex / yarn.tex - 1)).toBeLessThan(0.0051);
        expect(plies(again)).toBe(strands);
      },
    ),
    { seed: 23, numRuns: 500 },
  );
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, type Point } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import type { Finding } from '#craft/look/finding.ts';
import { lookOver } from '#craft/look/look-over.ts';
import { findRegularity } from '#craft/true/index.ts';
import type { Pattern, Pin } from '#pattern/pattern.ts';
import { edging, jitter } from '../../support/patterns/index.ts';
import { inspection, pinsAt, strip } from './inspections.ts';

const anyPlaces = fc.array(
  fc.record({ x: fc.integer({ min: 0, max: 24 }), y: fc.integer({ min: 0, max: 24 }) }),
  { maxLength: 50 },
);

/** A pattern with many kinds of trouble in it. */
const troubled = (): Pattern => {
  const { pattern } = jitter(edging({ repeats: 2 }), 0.25, seededRandom(4));
  const pins = [
    ...pattern.pins,
    { ...pattern.pins[9]!, id: 'twice' },
    { ...pattern.pins[30]!, id: 'near', x: pattern.pins[30]!.x + 0.6 },
  ];
  return {
    ...pattern,
    pins: pins.map((pin, at) => (at % 50 === 7 ? { ...pin, confidence: 0.2 } : pin)),
    marks: [...pattern.marks, { id: 'loose', kind: 'picot', at: { x: 200, y: 200 } }],
  };
};

const lookAt = (pattern: Pattern): Finding[] => lookOver(inspection(pattern, findRegularity(pattern.pins)));

describe('looking over', () => {
  it('copes with any handful of pins', () => {
    fc.assert(
      fc.property(anyPlaces, fc.constantFrom('mm' as const, 'px' as const), (places, unit) => {
        const findings = lookOver(inspection({ unit, pins: pinsAt(places) }));
        for (const { sentence, pins, at } of findings) {
          expect(sentence).not.toMatch(/undefined|NaN|Infinity/);
          expect(pins.every((index) => index < places.length)).toBe(true);
          expect(at === null || (Number.isFinite(at.x) && Number.isFinite(at.y))).toBe(true);
        }
      }),
    );
  });

  it('says the same wherever the pattern lies on its sheet', () => {
    const by = { x: 35.5, y: 12.25 };
    const shifted = (pattern: Pattern): Pattern => ({
      ...pattern,
      pins: pattern.pins.map((pin) => ({ ...pin, ...add(pin, by) })),
      marks: pattern.marks.map((mark) =>
        mark.id === 'loose' ? { id: 'loose', kind: 'picot', at: { x: 235.5, y: 212.25 } } : mark,
      ),
    });
    const unframed = { ...troubled(), sheet: { width: 9999, height: 9999 } };
    const away = {
      ...unframed,
      pins: unframed.pins.map((pin) => ({ ...pin, ...add(pin, { x: 50, y: 50 }) })),
    };
    const rulesOf = (pattern: Pattern) =>
      lookAt(pattern).map(({ rule, pins }) => `${rule} ${pins.join(' ')}`);
    expect(rulesOf(shifted(away))).toEqual(rulesOf(away));
    expect(rulesOf(away).length).toBeGreaterThan(6);
  });

  it('says the same twice', () => {
    expect(lookAt(troubled())).toEqual(lookAt(troubled()));
  });

  it('puts faults first, then warnings, then notes', () => {
    const ranks = lookAt(troubled()).map(({ severity }) => ['fault', 'warning', 'note'].indexOf(severity));
    expect(new Set(ranks).size).toBeGreaterThan(1);
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
  });

  it('leaves plain values that survive JSON', () => {
    const findings = lookAt(troubled());
    expect(JSON.parse(JSON.stringify(findings))).toEqual(findings);
  });

  it('gathers thousands of pins on one spot into one finding', () => {
    const heap: Point[] = Array.from({ length: 20_000 }, (_, at) => ({ x: 90 + 1e-6 * (at % 7), y: 90 }));
    const findings = lookOver(inspection({ pins: pinsAt([...strip, ...heap]) }));
    expect(findings.map((finding) => finding.rule)).toEqual(['doubled-pins']);
    expect(findings[0]!.pins).toHaveLength(20_000);
  });

  it('refuses a regularity that belongs to another pattern', () => {
    const { regularity } = inspection({ pins: pinsAt(strip.slice(1)) });
    expect(() => lookOver(inspection({}, regularity))).toThrow('regularity of 95 pins, pattern of 96');
  });
});

describe('sentences', () => {
  it('say of a doubtful dot why, and whether the pins round it speak for it', () => {
    const pins = pinsAt(strip).map(
      (pin, at): Pin => (at === 7 ? { ...pin, confidence: 0.3, doubt: ['faint'] } : pin),
    );
    const [alone] = lookOver(inspection({ pins }));
    expect(alone?.severity).toBe('warning');
    expect(alone?.sentence).toBe(
      'Pin 8, at 27.5 mm across, 22.5 mm down, is in doubt: it is faint. Compare with the paper; keep it or take it out.',
    );
    const [called] = lookOver(inspection({ pins }, { structureOf: pins.map(() => 'ground') }));
    expect(called?.severity).toBe('note');
    expect(called?.sentence).toContain('The ground round it calls for a pin there');
  });

  it('speak of pixels where the scale is not known', () => {
    const speck = pinsAt([...strip, { x: 20, y: 20 }]);
    const doubled = lookOver(inspection({ unit: 'px', pins: speck }));
    expect(doubled.map(({ sentence }) => sentence)).toContain(
      'Pins 1 and 97 stand on one spot, 0 px apart, at 20 px across, 20 px down. Keep one of them.',
    );
  });

  it('name the two holes, the card and what to do', () => {
    const pins = pinsAt([...strip, { x: 20.4, y: 20 }]);
    const [finding] = lookOver(inspection({ pins, sizes: { hole: 0.6, cardThickness: 0.4 } }));
    expect(finding?.sentence).toBe(
      'Pins 1 and 97 stand 0.4 mm apart; with 0.6 mm holes in 0.4 mm card the two holes would run into one. Move one, or take it out.',
    );
  });
});

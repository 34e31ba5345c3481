import fc from 'fast-check';
import type { Anchor, Area, Mark, Pattern, Pin, Run } from '#pattern/pattern.ts';

/**
 * Random whole patterns: every kind of record and part, references that resolve, numbers as a file carries them
 * (to 0.001) unless `fine`, when they have all their digits.
 */
export function arbitraryPattern({ fine = false } = {}): fc.Arbitrary<Pattern> {
  return fc
    .uniqueArray(arbitraryId, { minLength: 3, maxLength: 12 })
    .chain((ids) => fc.tuple(fc.tuple(...ids.map((id) => arbitraryPin(id, fine))), arbitraryRest(ids, fine)))
    .map(([pins, rest]) => ({ ...rest, pins }));
}

/** Lengths from -100 m to 100 m, never -0, which JSON does not know. */
export const arbitraryLength = (fine: boolean, min = -100_000): fc.Arbitrary<number> =>
  fine
    ? fc.double({ min, max: 100_000, noNaN: true }).map((value) => value + 0)
    : fc.integer({ min: min * 1000, max: 1e8 }).map((value) => value / 1000);

export const arbitraryPin = (id: string, fine: boolean): fc.Arbitrary<Pin> =>
  fc.record(
    {
      id: fc.constant(id),
      x: arbitraryLength(fine),
      y: arbitraryLength(fine),
      diameter: arbitraryLength(fine, 0.001),
      confidence: fc.integer({ min: 0, max: 1000 }).map((value) => value / 1000),
      doubt: fc.array(fc.constantFrom('faint', 'oval', 'line-end', 'edge'), { maxLength: 3 }),
    },
    { requiredKeys: ['id', 'x', 'y'] },
  );

const FIRST = 'abcXYZ0189';
const arbitraryId = fc
  .tuple(fc.constantFrom(...FIRST), fc.string({ unit: fc.constantFrom(...`${FIRST}._:-`), maxLength: 6 }))
  .map(([first, rest]) => first + rest)
  .chain((id) => fc.constantFrom(id, id, 'constructor', 'toString', 'valueOf'));

type Rest = Omit<Pattern, 'pins'>;

function arbitraryRest(pins: readonly string[], fine: boolean): fc.Arbitrary<Rest> {
  const pin = fc.constantFrom(...pins);
  const point = fc.record({ x: arbitraryLength(fine), y: arbitraryLength(fine) });
  const anchor: fc.Arbitrary<Anchor> = fc.oneof(
    point,
    pin.map((id) => ({ pin: id })),
  );
  const path = fc.array(anchor, { minLength: 2, maxLength: 5 });
  const measure = arbitraryLength(fine, 0.001);
  const text = fc.string({ unit: 'binary', maxLength: 20 });

  const run: fc.Arbitrary<Run> = fc.record({
    id: arbitraryId,
    pins: fc.array(pin, { minLength: 2, maxLength: 6 }),
    shape: fc.constantFrom('line', 'curve'),
    closed: fc.boolean(),
    role: fc.constantFrom('footside', 'outline', 'other'),
    even: fc.boolean(),
  });
  const mark: fc.Arbitrary<Mark> = fc.oneof(
    fc.record({ id: arbitraryId, kind: fc.constant('line'), from: anchor, to: anchor }),
    fc.record(
      { id: arbitraryId, kind: fc.constant('gimp'), path, closed: fc.boolean(), width: measure },
      { requiredKeys: ['id', 'kind', 'path', 'closed'] },
    ),
    fc.record({ id: arbitraryId, kind: fc.constant('plait'), path }),
    fc.record({
      id: arbitraryId,
      kind: fc.constant('picot'),
      at: anchor,
      side: fc.constantFrom('left', 'right'),
    }),
    fc.record({ id: arbitraryId, kind: fc.constant('arrow'), from: anchor, to: anchor, label: text }),
    fc.record({
      id: arbitraryId,
      kind: fc.constant('number'),
      at: anchor,
      value: fc.integer({ min: 0, max: 99 }),
    }),
    fc.record({ id: arbitraryId, kind: fc.constant('text'), at: anchor, text, height: measure }),
  );
  const area: fc.Arbitrary<Area> = fc.record(
    {
      id: arbitraryId,
      outline: fc.array(anchor, { minLength: 3, maxLength: 6 }),
      stitch: fc.constantFrom('cloth', 'half', 'ground'),
      name: text,
      tint: fc.constantFrom('#c0ffee', '#000000'),
    },
    { requiredKeys: ['id', 'outline'] },
  );
  const list = <Item extends { id: string }>(item: fc.Arbitrary<Item>) =>
    fc.uniqueArray(item, { selector: ({ id }) => id, maxLength: 4 });

  return fc.record(
    {
      unit: fc.constantFrom('mm', 'px'),
      about: fc.record(
        { name: text, maker: text, source: text, permission: text, notes: text },
        { requiredKeys: [] },
      ),
      runs: list(run),
      marks: list(mark),
      areas: list(area),
      repeat: fc.record({ step: fc.record({ x: measure, y: arbitraryLength(fine) }) }),
      sizes: fc.record({ pin: measure, hole: measure, footsideSpacing: measure }, { requiredKeys: [] }),
      sheet: fc.record({ width: measure, height: measure }),
      scale: fc.constantFrom<Pattern['scale']>(
        { from: 'none' },
        { from: 'drafted' },
        { from: 'file', dpi: 300 },
        { from: 'span', dpi: 299.123456, length: 100 },
      ),
      paper: fc.record({
        entry: fc.constant('paper.jpg'),
        sha256: fc.constant('0123456789abcdef'.repeat(4)),
        width: fc.integer({ min: 1, max: 65535 }),
        height: fc.integer({ min: 1, max: 65535 }),
        toPattern: fc.constant({ a: 0.084666667, b: 0.0001, c: -0.0001, d: 0.084666667, e: 0, f: -12.5 }),
        stood: fc.dictionary(pin, point, { noNullPrototype: true }),
      }),
      recipe: fc.record({
        kind: fc.constant('strip'),
        spacing: fc.double({ min: 0.1, max: 100, noNaN: true }),
        angle: fc.double({ min: 30, max: 75, noNaN: true }),
        repeats: fc.integer({ min: 1, max: 100 }),
        length: fc.integer({ min: 1, max: 100 }),
        width: fc.integer({ min: 1, max: 100 }),
        ground: fc.constantFrom('plain', 'rose'),
      }),
    },
    { requiredKeys: ['unit', 'about', 'runs', 'marks', 'areas', 'sizes', 'scale'] },
  );
}

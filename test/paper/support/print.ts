import { type PaperSize, paperNamed } from '#base/units/paper.ts';
import type { InkMark } from '#paper/drawing/mark.ts';
import type { PrintOptions } from '#paper/sheet/options.ts';
import { type Printed, printSheets } from '#paper/sheet/print.ts';
import type { PrickingOrder } from '#pattern/order.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { KnownPattern } from '../../support/patterns/index.ts';
import { typeface } from './fonts.ts';

export const paper = (name: string): PaperSize => {
  const size = paperNamed(name);
  if (!size) throw new Error(`No paper is called ${name}`);
  return size;
};

/** The pattern with a maker, as a well-kept one has. Invented names. */
export const stated = ({ pattern }: KnownPattern): Pattern => ({
  ...pattern,
  about: {
    ...pattern.about,
    maker: 'Ottilie Brandwijk',
    source: 'her own draft',
    permission: 'may be copied for a class',
  },
});

/** Prints and expects that nothing stood in the way. */
export function print(pattern: Pattern, options: Partial<PrintOptions> = {}): Printed {
  const printed = printSheets(pattern, {
    typeface,
    way: 'through',
    paper: paper('A4'),
    revision: 'r1',
    ...options,
  });
  if (!printed.ok) throw new Error(`Could not print: ${JSON.stringify(printed.trouble)}`);
  return printed.value;
}

/** A plain order: all pins that are not ground by sight, then the ground in lines along a ruler. */
export function plainOrder({ pattern, roles }: KnownPattern): PrickingOrder {
  const lines = new Map<number, number[]>();
  pattern.pins.forEach(({ x, y }, k) => {
    if (roles[k] !== 'ground') return;
    const line = Math.round((x + y) * 2);
    lines.set(line, [...(lines.get(line) ?? []), k]);
  });
  const byRole = (isWanted: (role: string) => boolean): number[] =>
    roles.flatMap((role, k) => (isWanted(role) ? [k] : []));
  return {
    passes: [
      { kind: 'outside-edge', ruler: null, order: byRole((role) => role === 'foot' || role === 'head') },
      {
        kind: 'motif',
        ruler: null,
        order: byRole((role) => role !== 'foot' && role !== 'head' && role !== 'ground'),
      },
      ...[...lines.entries()]
        .sort(([one], [other]) => one - other)
        .map(([, order]) => ({
          kind: 'ground' as const,
          ruler: { from: pattern.pins[order[0]!]!, to: pattern.pins[order.at(-1)!]! },
          order,
        })),
    ],
  };
}

export const holesOf = (marks: readonly InkMark[]): InkMark[] => marks.filter(({ role }) => role === 'hole');

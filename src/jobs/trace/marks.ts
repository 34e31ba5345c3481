import type { TracedGimp } from '#craft/trace/gimps.ts';
import type { PinLine } from '#craft/trace/lines/line.ts';
import type { Mark, Pin } from '#pattern/pattern.ts';

/**
 * What was drawn on the paper, as marks: working lines from pin to pin, gimps at places of their own. `size` is a pixel's
 * size in the pattern's unit; where that is no length, a gimp's width is left open, since it is always in millimetres.
 */
export function marksOf(
  lines: readonly PinLine[],
  gimps: readonly TracedGimp[],
  pins: readonly Pin[],
  size: number,
  unit: 'mm' | 'px',
): Mark[] {
  return [
    ...lines.map(({ from, to }, index): Mark => {
      return { id: `m${index + 1}`, kind: 'line', from: { pin: pins[from]!.id }, to: { pin: pins[to]!.id } };
    }),
    ...gimps.map(({ path, closed, width }, index): Mark => {
      return {
        id: `m${lines.length + index + 1}`,
        kind: 'gimp',
        path: path.map(({ column, row }) => ({ x: column * size, y: row * size })),
        closed,
        ...(unit === 'mm' && { width: width * size }),
      };
    }),
  ];
}

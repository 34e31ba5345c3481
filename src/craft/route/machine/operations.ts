import { distance, type Point } from '#base/geometry/point.ts';
import { isInside } from '#base/geometry/polygon.ts';

/** One thing that the machine does: a hole, or a closed cut by its index, from the corner where it starts. */
export type Operation =
  | { readonly kind: 'hole'; readonly hole: number }
  | { readonly kind: 'inner' | 'outline'; readonly cut: number; readonly start: number };

/**
 * Everything a machine does to a sheet, in a safe order: what is cut loose moves, so that each part gets all its holes
 * first, then its inner cuts from the inmost out, and its outline last (common practice, no source). A part is an outermost
 * cut with all that lies in it; holes outside any part come first. `holeOrder` says in which order the holes of a part are
 * made; parts and cuts follow by nearness. Cuts are closed and do not cross each other.
 */
export function operationsInOrder(
  holes: readonly Point[],
  holeOrder: readonly number[],
  cuts: readonly (readonly Point[])[],
): Operation[] {
  const drawn = [...cuts.keys()].filter((cut) => cuts[cut]!.length > 0);
  const within = (place: Point) => drawn.filter((cut) => isInside(cuts[cut]!, place));
  const around = new Map(drawn.map((cut) => [cut, within(cuts[cut]![0]!).filter((other) => other !== cut)]));
  const depth = (cut: number) => around.get(cut)!.length;
  const partOf = (cuts: readonly number[]) => cuts.find((cut) => depth(cut) === 0);

  const holesOf = groupBy(holeOrder, (hole) => partOf(within(holes[hole]!)));
  const innerOf = groupBy(
    drawn.filter((cut) => depth(cut) > 0),
    (cut) => partOf(around.get(cut)!),
  );

  const done: Operation[] = [];
  let here: Point = { x: 0, y: 0 };
  const drill = (part: number | undefined) => {
    for (const hole of holesOf.get(part) ?? []) {
      done.push({ kind: 'hole', hole });
      here = holes[hole]!;
    }
  };
  const cutAll = (kind: 'inner' | 'outline', wanted: readonly number[]) => {
    for (const left = new Set(wanted); left.size > 0; ) {
      const [cut, start] = nearestCorner(here, [...left], cuts);
      left.delete(cut);
      done.push({ kind, cut, start });
      here = cuts[cut]![start]!;
    }
  };

  drill(undefined);
  for (const left = new Set(drawn.filter((cut) => depth(cut) === 0)); left.size > 0; ) {
    const [part] = nearestCorner(here, [...left], cuts);
    left.delete(part);
    drill(part);
    const inner = innerOf.get(part) ?? [];
    const depths = [...new Set(inner.map(depth))].sort((one, other) => other - one);
    for (const level of depths)
      cutAll(
        'inner',
        inner.filter((cut) => depth(cut) === level),
      );
    cutAll('outline', [part]);
  }
  return done;
}

function groupBy<Thing, Key>(things: readonly Thing[], keyOf: (thing: Thing) => Key): Map<Key, Thing[]> {
  const groups = new Map<Key, Thing[]>();
  for (const thing of things) {
    const group = groups.get(keyOf(thing));
    if (group) group.push(thing);
    else groups.set(keyOf(thing), [thing]);
  }
  return groups;
}

/** Of all corners of some cuts the one nearest to a place: its cut, and which corner. */
function nearestCorner(
  here: Point,
  among: readonly number[],
  cuts: readonly (readonly Point[])[],
): [cut: number, start: number] {
  let best: [number, number] = [among[0]!, 0];
  let least = Number.POSITIVE_INFINITY;
  for (const cut of among)
    for (const [corner, place] of cuts[cut]!.entries()) {
      const away = distance(here, place);
      if (away < least) [best, least] = [[cut, corner], away];
    }
  return best;
}

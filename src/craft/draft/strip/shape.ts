import type { StripArea } from '#pattern/recipe/strip-area.ts';

/** A place on the lattice, in columns and rows; whole where a pin may stand, or half way between. */
export type Place = readonly [i: number, j: number];

/** The outline of an area in one repeat. All its corners are right angles in columns and rows. */
export interface Shape {
  /** Clockwise on the sheet. */
  readonly corners: readonly Place[];
  /** Every place of the ground on its outline, in order from the first corner. */
  readonly outline: readonly Place[];
  /** Whether a place lies within it, not on its outline. */
  readonly holds: (i: number, j: number) => boolean;
  /** Columns and rows that it spans. */
  readonly columns: readonly [number, number];
  readonly rows: readonly [number, number];
}

type Centred = Exclude<StripArea, { shape: 'trail' }>;

/** A trail is no closed shape: see `trail.ts`. */
export function shapeOf(area: Centred): Shape {
  const { column: i, row: j, size } = area;
  switch (area.shape) {
    case 'diamond':
    case 'spider':
      return polygon([
        [i, j - size],
        [i + size, j],
        [i, j + size],
        [i - size, j],
      ]);
    case 'square':
      return polygon([
        [i - size, j - size],
        [i + size, j - size],
        [i + size, j + size],
        [i - size, j + size],
      ]);
    case 'chevron':
      return polygon(chevron(area));
  }
}

/** Whether the outline's pins fall on places of the ground, where column + row is even. */
export const isOnLattice = (area: StripArea): boolean => {
  const beside = area.shape === 'diamond' || area.shape === 'spider' ? area.size : 0;
  return (area.column + area.row + beside) % 2 === 0;
};

function chevron({ column, row, arm, size, points }: Extract<StripArea, { shape: 'chevron' }>): Place[] {
  // Back from the tip, and to its side.
  const turned = (back: number, side: number): Place => {
    switch (points) {
      case 'headside':
        return [column - back, row + side];
      case 'footside':
        return [column + back, row - side];
      case 'up':
        return [column + side, row + back];
      case 'down':
        return [column - side, row - back];
    }
  };
  return [
    turned(0, 0),
    turned(arm, arm),
    turned(arm + size, arm - size),
    turned(2 * size, 0),
    turned(arm + size, size - arm),
    turned(arm, -arm),
  ];
}

function polygon(corners: readonly Place[]): Shape {
  const outline = corners.flatMap(([i, j], k): Place[] => {
    const [p, q] = corners[(k + 1) % corners.length]!;
    const steps = Math.max(Math.abs(p - i), Math.abs(q - j));
    // Along or across the strip only every second place is one of the ground.
    const stride = i === p || j === q ? 2 : 1;
    return Array.from({ length: Math.ceil(steps / stride) }, (_, n) => [
      i + ((p - i) * n * stride) / steps,
      j + ((q - j) * n * stride) / steps,
    ]);
  });
  return {
    corners,
    outline,
    holds: (i, j) => isWithin(corners, i, j),
    columns: spanOf(corners.map(([i]) => i)),
    rows: spanOf(corners.map(([, j]) => j)),
  };
}

const spanOf = (values: readonly number[]): readonly [number, number] => [
  Math.min(...values),
  Math.max(...values),
];

/** Strictly within: crossings are counted to the right, and a place on a side is not within. Exact, since all is halves. */
function isWithin(corners: readonly Place[], i: number, j: number): boolean {
  let odd = false;
  for (let k = 0; k < corners.length; k++) {
    const [p, q] = corners[k]!;
    const [r, s] = corners[(k + 1) % corners.length]!;
    const side = (r - p) * (j - q) - (s - q) * (i - p);
    const between = Math.min(p, r) <= i && i <= Math.max(p, r) && Math.min(q, s) <= j && j <= Math.max(q, s);
    if (side === 0 && between) return false;
    if (q > j !== s > j && side > 0 === s > q) odd = !odd;
  }
  return odd;
}

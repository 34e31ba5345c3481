import { distance, type Point } from '#base/geometry/point.ts';
import type { CheckedRun } from './runs.ts';
import type { Survey } from './survey.ts';

/**
 * Tells places on or beyond a footside or headside that the pattern names and that has all its pins there: the lace
 * ends at it, and none of its ground is lacking outside.
 */
export function beyondEdges({ pattern: { pins }, runs, distinct }: Survey): (place: Point) => boolean {
  const edges = runs
    .filter(({ role }) => role === 'footside' || role === 'headside')
    .map((run) => edgeOf(run, pins));
  if (edges.length === 0) return () => false;
  // the lace lies on the side of an edge on which most of the pins near it stand
  const inner = new Map<Edge, number>();
  const stride = Math.ceil(distinct.length / SAMPLES);
  for (const index of distinct.filter((_, at) => at % stride === 0)) {
    const near = nearestEdge(edges, pins[index]!);
    if (near.away > 0) inner.set(near.edge, (inner.get(near.edge) ?? 0) + near.side);
  }
  return (place) => {
    const { edge, away, side, isWhole } = nearestEdge(edges, place);
    if (!isWhole || side === 0) return false;
    return away <= ON_EDGE * edge.spacing || side * (inner.get(edge) ?? 0) < 0;
  };
}

/** Nearer to an edge than this, in its own steps, a place is on it. Our own choice. */
const ON_EDGE = 0.2;

/** A step along an edge longer than this, in steps of the edge, may lack a pin of its own. Our own choice. */
const WHOLE = 1.6;

/** So many pins tell on which side of an edge the lace lies. */
const SAMPLES = 400;

interface Edge {
  readonly way: readonly Point[];
  readonly spacing: number;
}

interface NearEdge {
  readonly edge: Edge;
  readonly away: number;
  /** On which side of the edge as it runs, -1 or 1; 0 where the edge ends before it comes past. */
  readonly side: number;
  /** Whether the nearest step of the edge is as short as its others. */
  readonly isWhole: boolean;
}

function edgeOf({ pins: run, closed, spacing }: CheckedRun, pins: readonly Point[]): Edge {
  const way = run.map((index) => pins[index]!);
  return { way: closed ? [...way, way[0]!] : way, spacing };
}

function nearestEdge(edges: readonly Edge[], place: Point): NearEdge {
  let best: NearEdge = { edge: edges[0]!, away: Number.POSITIVE_INFINITY, side: 0, isWhole: false };
  for (const edge of edges) {
    for (let k = 1; k < edge.way.length; k++) {
      const [from, to] = [edge.way[k - 1]!, edge.way[k]!];
      const [dx, dy] = [to.x - from.x, to.y - from.y];
      const along = ((place.x - from.x) * dx + (place.y - from.y) * dy) / (dx * dx + dy * dy || 1);
      const held = Math.max(0, Math.min(1, along));
      const away = distance(place, { x: from.x + held * dx, y: from.y + held * dy });
      if (away >= best.away) continue;
      const turn = dx * (place.y - from.y) - dy * (place.x - from.x);
      const isPast = (k === 1 && along < 0) || (k === edge.way.length - 1 && along > 1);
      best = {
        edge,
        away,
        side: isPast ? 0 : Math.sign(turn) || 1,
        isWhole: Math.hypot(dx, dy) <= WHOLE * edge.spacing,
      };
    }
  }
  return best;
}

/**
 * The machine's order: time, growth with the holes, and how long the way is. Peers in the same run: the textbook way
 * (nearest neighbour, then plain 2-opt; G. A. Croes, Operations Research 6 (1958) 791-812), written out below, and
 * networkx (Debian: python3-networkx), where python3 has it. Times are processor seconds of this one process, so that
 * other work on the machine counts little.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { distance, type Point } from '#base/geometry/point.ts';
import { normal, seededRandom } from '#base/random.ts';
import { machineOrder } from '#craft/route/machine/order.ts';

const SIZES = [1_000, 10_000, 30_000, 100_000];
const SEED = 20_260_101;
/** mm, and mm²: the diagonal step of the ground, and the room that each of its holes has. */
const STEP = Math.sqrt(8);
const AREA_A_HOLE = 8;
/**
 * For holes at random the shortest tour tends to 0.7124 sqrt(n area) (D. S. Johnson and L. A. McGeoch, in Local Search in
 * Combinatorial Optimization, 1997); the rim of the area adds to it, the more the fewer the holes.
 */
const UNIFORM = 0.7124;
/** The Held-Karp bound of d493 in real distances (a linear program, solved to its optimum). */
const HELD_KARP = 34_842.9035;
const D493 = '.cache/outside/drilling-tour/d493.tsp';

if (existsSync(D493)) {
  console.log('d493, a real drilling (TSPLIB), against its Held-Karp bound:');
  const holes = placesIn(readFileSync(D493, 'utf8'));
  for (const { name, order, seconds } of [
    timed('ours', () => machineOrder(holes).order),
    timed('nearest neighbour + 2-opt', () => twoOpt(nearestNeighbour(holes), holes)),
    ...networkx(holes),
  ])
    console.log(`  ${name.padEnd(28)} ${over(lengthOf(order, holes), HELD_KARP)}   ${seconds.toFixed(2)} s`);
} else console.log(`(${D493} is not here: npm test fetches it)`);

console.log('\n2,000 holes at random:');
const few = uniform(2_000);
for (const { name, order, seconds } of [
  timed('ours', () => machineOrder(few).order),
  timed('nearest neighbour + 2-opt', () => twoOpt(nearestNeighbour(few), few)),
])
  console.log(`  ${name.padEnd(28)} ${lengthOf(order, few).toFixed(0)} mm   ${seconds.toFixed(2)} s`);

for (const [title, holesOf, least] of [
  ['holes at random', uniform, (n: number) => UNIFORM * n * Math.sqrt(AREA_A_HOLE)],
  ['a ground at 45 degrees, exact', ground(0), (n: number) => n * STEP],
  ['the same, shaken by 0.1 mm', ground(0.1), null],
] as const) {
  console.log(`\n${title}`);
  console.log(
    '  holes     shortest      growth   n log n   way              spread 5 mm   way a hole   too near',
  );
  let before: { size: number; seconds: number } | null = null;
  for (const size of SIZES) {
    const holes = holesOf(size);
    const shortest = timed('', () => machineOrder(holes).order);
    const spread = timed('', () => machineOrder(holes, 5).order);
    const tooNear = steps(spread.order, holes).filter((step) => step < 5).length;
    const way = lengthOf(shortest.order, holes);
    console.log(
      [
        `  ${String(size).padEnd(9)}`,
        `${shortest.seconds.toFixed(2)} s`.padEnd(13),
        (before ? (shortest.seconds / before.seconds).toFixed(2) : '').padEnd(8),
        (before ? (nLogN(size) / nLogN(before.size)).toFixed(2) : '').padEnd(9),
        (least ? over(way, least(holes.length)) : `${(way / holes.length).toFixed(3)} mm a hole`).padEnd(16),
        `${spread.seconds.toFixed(2)} s`.padEnd(13),
        `${(lengthOf(spread.order, holes) / holes.length).toFixed(2)} mm`.padEnd(12),
        tooNear,
      ].join(' '),
    );
    before = { size, seconds: shortest.seconds };
  }
}

function uniform(size: number): Point[] {
  const random = seededRandom(SEED + size);
  const side = Math.sqrt(size * AREA_A_HOLE);
  return Array.from({ length: size }, () => ({ x: side * random(), y: side * random() }));
}

/** Rows half a spacing apart, each pushed by half a spacing: neighbours stand a diagonal step apart. */
function ground(shake: number): (size: number) => Point[] {
  return (size) => {
    const random = seededRandom(SEED + size);
    const across = 2 * Math.round(Math.sqrt(size / 2) / 2);
    const off = () => (shake === 0 ? 0 : shake * normal(random));
    return Array.from({ length: across * Math.round(size / across) }, (_, at) => {
      const row = Math.floor(at / across);
      return { x: 4 * (at % across) + 2 * (row % 2) + off(), y: 2 * row + off() };
    });
  };
}

function timed(name: string, work: () => readonly number[]) {
  const start = process.cpuUsage();
  const order = work();
  const { user, system } = process.cpuUsage(start);
  return { name, order, seconds: (user + system) / 1e6 };
}

function nearestNeighbour(holes: readonly Point[]): number[] {
  const left = new Set(holes.keys());
  const order: number[] = [];
  for (let here = 0; left.size > 0; ) {
    left.delete(here);
    order.push(here);
    let [next, least] = [here, Number.POSITIVE_INFINITY];
    for (const hole of left) {
      const away = distance(holes[here]!, holes[hole]!);
      if (away < least) [next, least] = [hole, away];
    }
    here = next;
  }
  return order;
}

/** Turns round any stretch that makes the tour shorter, until there is none. */
function twoOpt(start: readonly number[], holes: readonly Point[]): number[] {
  const order = [...start];
  const size = order.length;
  const way = (one: number, other: number) => distance(holes[one]!, holes[other]!);
  for (let better = true; better; ) {
    better = false;
    for (let i = 0; i < size - 1; i++) {
      for (let j = i + 2; j < size - (i === 0 ? 1 : 0); j++) {
        const [a, b, c, d] = [order[i]!, order[i + 1]!, order[j]!, order[(j + 1) % size]!];
        if (way(a, c) + way(b, d) >= way(a, b) + way(c, d) - 1e-9) continue;
        for (let low = i + 1, high = j; low < high; low++, high--)
          [order[low], order[high]] = [order[high]!, order[low]!];
        better = true;
      }
    }
  }
  return order;
}

/** The order of each of networkx's methods that take a moderate time, in a process of its own. */
function networkx(holes: readonly Point[]): { name: string; order: number[]; seconds: number }[] {
  const script = `
import json, sys, time
try:
    import networkx as nx
    from networkx.algorithms import approximation as approx
except ImportError:
    sys.exit(3)
p = json.load(sys.stdin)
g = nx.Graph()
for i, a in enumerate(p):
    for j in range(i):
        g.add_edge(i, j, weight=((a["x"] - p[j]["x"]) ** 2 + (a["y"] - p[j]["y"]) ** 2) ** 0.5)
found = []
for name, way in (("greedy", approx.greedy_tsp), ("christofides", approx.christofides)):
    t = time.process_time()
    order = way(g, weight="weight")[:-1]
    found.append(dict(name="networkx " + nx.__version__ + " " + name, order=order, seconds=time.process_time() - t))
json.dump(found, sys.stdout)`;
  const run = spawnSync('/usr/bin/python3', ['-c', script], {
    input: JSON.stringify(holes),
    encoding: 'utf8',
  });
  if (run.status === 0) return JSON.parse(run.stdout);
  console.log('  (python3-networkx is not here)');
  return [];
}

function placesIn(tsplib: string): Point[] {
  return tsplib.split('\n').flatMap((line) => {
    const [, x, y] = /^\s*\d+\s+(\S+)\s+(\S+)\s*$/.exec(line) ?? [];
    return x === undefined || y === undefined ? [] : [{ x: Number(x), y: Number(y) }];
  });
}

function steps(order: readonly number[], holes: readonly Point[]): number[] {
  return order.map((hole, at) => distance(holes[hole]!, holes[order[(at + 1) % order.length]!]!));
}

function lengthOf(order: readonly number[], holes: readonly Point[]): number {
  return steps(order, holes).reduce((sum, step) => sum + step, 0);
}

function over(way: number, least: number): string {
  return `+${(100 * (way / least - 1)).toFixed(2)} %`.padEnd(9);
}

function nLogN(size: number): number {
  return size * Math.log(size);
}

/**
 * A figure or part of a recipe as people call it: 'headside.pins' is 'Headside, pins', 'areas.0.size' is
 * 'Area 1, size'. Within a part that is named already, what is beyond it: 'Pins'. Files and the command keep the paths.
 */
export function figureName(path: string, within = ''): string {
  const named = within === '' ? 0 : namesOf(within).length;
  return capital(namesOf(path).slice(named).join(', '));
}

/** One name for each step of a path; a list and the number behind it are one step. */
function namesOf(path: string): string[] {
  const parts = path.split('.');
  const names: string[] = [];
  for (let at = 0; at < parts.length; at++) {
    const part = parts[at]!;
    const one = ONE_OF[part];
    const number = parts[at + 1];
    if (one !== undefined && number !== undefined && /^\d+$/.test(number)) {
      names.push(`${one} ${Number(number) + 1}`);
      at++;
    } else if (part !== 'course') names.push(NAMES[part] ?? part);
  }
  return names;
}

/** What one thing of a list is called. */
const ONE_OF: Readonly<Record<string, string>> = {
  areas: 'area',
  rounds: 'round',
  tapes: 'tape',
  joins: 'join',
  plaits: 'plait',
  leaves: 'leaf',
  motifs: 'motif',
  outline: 'point',
  through: 'point',
  curves: 'curve',
};

/** Where the name in the file is no word that one would say. */
const NAMES: Readonly<Record<string, string>> = {
  spacing: 'spacing of the pins',
  angle: 'angle of the ground',
  repeats: 'number of repeats',
  length: 'length of a repeat',
  depthShare: 'depth',
  perRepeat: 'how many in a repeat',
  tint: 'colour',
  points: 'where its tip points',
  arm: 'length of an arm',
  corner: 'in the corner',
  part: 'how much of it',
  x: 'across',
  y: 'down',
  tolerance: 'freedom in the corner',
  foot: 'where the footside lies',
  arc: 'how far it goes round',
  outer: 'outermost round',
  groups: 'equal parts of an edge',
  start: 'how it begins',
  finish: 'how it ends',
  workers: 'lines of the workers',
  closed: 'ends where it begins',
  loop: 'how far a picot stands out',
  again: 'coming again',
  count: 'how many times',
  at: 'place',
  turn: 'turned by',
  sharp: 'a corner',
  first: 'first shaping point',
  second: 'second shaping point',
  doubled: 'twice the pins outside',
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

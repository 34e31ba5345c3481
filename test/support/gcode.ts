/**
 * A small interpreter of the published words of RS274/NGC (NISTIR 6556, "The NIST RS274NGC Interpreter", 2000): what a
 * machine does with a file. It refuses every word that it does not know, and arcs whose ends lie on different circles.
 */
export interface Move {
  /** 'rapid' G0, 'line' G1, 'arc' G2 and G3, 'dwell' G4. */
  readonly kind: 'rapid' | 'line' | 'arc' | 'dwell';
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  /** Of an arc. */
  readonly centre?: readonly [number, number];
  readonly anticlockwise?: boolean;
  /** Whether the beam is on: M3 or M4 with S above nought. */
  readonly burns: boolean;
  /** M3 holds the power while the tool stands; M4 lowers it to nothing. */
  readonly spindle: 'M3' | 'M4' | 'M5';
  readonly feed: number;
  readonly power: number;
  /** Of a dwell, as written. */
  readonly dwell?: number;
}

export interface Program {
  readonly moves: readonly Move[];
  readonly comments: readonly string[];
  /** Modal state at the end. */
  readonly end: { readonly spindle: string; readonly power: number };
}

export function interpret(text: string): Program {
  const moves: Move[] = [];
  const comments: string[] = [];
  const state = {
    motion: '',
    units: '',
    distance: '',
    plane: '',
    spindle: 'M5' as Move['spindle'],
    x: 0,
    y: 0,
    feed: 0,
    power: 0,
  };
  for (const line of text.split(/\r?\n/)) {
    const bare = line.replace(/\(([^()]*)\)/g, (_, comment: string) => {
      comments.push(comment);
      return '';
    });
    if (/[()]/.test(bare)) throw new Error(`Comments do not nest (3.3.4): ${line}`);
    const words = [...bare.matchAll(/([A-Z])\s*([-+]?(?:\d+\.?\d*|\.\d+))/gi)];
    if (
      words
        .map(([word]) => word)
        .join('')
        .replace(/\s/g, '') !== bare.replace(/\s/g, '')
    )
      throw new Error(`Not a block of words (3.3): ${line}`);
    if (words.length > 0)
      block(
        words.map(([, letter, number]) => [letter!.toUpperCase(), Number(number)]),
        line,
      );
  }
  return { moves, comments, end: { spindle: state.spindle, power: state.power } };

  function block(words: (readonly [string, number])[], line: string): void {
    const value = new Map<string, number>();
    let motion: string | null = null;
    let dwells = false;
    for (const [letter, number] of words) {
      const word = `${letter}${number}`;
      if (letter === 'G') {
        if (['G0', 'G1', 'G2', 'G3'].includes(word)) motion = word;
        else if (word === 'G4') dwells = true;
        else if (word === 'G17') state.plane = word;
        else if (word === 'G21') state.units = word;
        else if (word === 'G90') state.distance = word;
        else throw new Error(`Unknown word ${word}: ${line}`);
      } else if (letter === 'M') {
        if (!['M3', 'M4', 'M5'].includes(word)) throw new Error(`Unknown word ${word}: ${line}`);
        state.spindle = word as Move['spindle'];
      } else if ('XYIJFSP'.includes(letter)) {
        if (value.has(letter)) throw new Error(`Two ${letter} in one block (3.3.2): ${line}`);
        value.set(letter, number);
      } else throw new Error(`Unknown word ${word}: ${line}`);
    }
    state.feed = value.get('F') ?? state.feed;
    state.power = value.get('S') ?? state.power;
    const shared = {
      burns: state.spindle !== 'M5' && state.power > 0,
      spindle: state.spindle,
      feed: state.feed,
      power: state.power,
    };
    const from = [state.x, state.y] as const;
    if (dwells) {
      moves.push({ kind: 'dwell', from, to: from, dwell: value.get('P') ?? Number.NaN, ...shared });
      return;
    }
    if (motion) state.motion = motion;
    if (!value.has('X') && !value.has('Y')) return;
    if (state.units !== 'G21' || state.distance !== 'G90' || state.plane !== 'G17')
      throw new Error(`Units, distance or plane not set before the first move: ${line}`);
    const to = [value.get('X') ?? state.x, value.get('Y') ?? state.y] as const;
    [state.x, state.y] = to;
    if (state.motion === 'G0') moves.push({ kind: 'rapid', from, to, ...shared });
    else if (!(state.feed > 0)) throw new Error(`No feed rate (3.5.2): ${line}`);
    else if (state.motion === 'G1') moves.push({ kind: 'line', from, to, ...shared });
    else {
      const centre = [from[0] + (value.get('I') ?? 0), from[1] + (value.get('J') ?? 0)] as const;
      const radii = [from, to].map(([x, y]) => Math.hypot(x - centre[0], y - centre[1]));
      // 3.5.3.2: an error where the two radii differ by more than 0.002 mm.
      if (Math.abs(radii[0]! - radii[1]!) > 0.002) throw new Error(`Arc ends off its circle: ${line}`);
      moves.push({ kind: 'arc', from, to, centre, anticlockwise: state.motion === 'G3', ...shared });
    }
  }
}

import type { YarnSystem } from './system.ts';

/** A piece of a label: a number, a sign, or a word that means something. */
export type Token =
  | { readonly is: 'number'; readonly value: number; readonly text: string }
  | { readonly is: 'sign'; readonly sign: '/' | 'x' | '+' | ';' }
  | { readonly is: 'system'; readonly system: YarnSystem }
  | { readonly is: 'ticket' | 'spun-silk' | 'resultant' | 'ply' | 'filaments' }
  | { readonly is: 'unknown'; readonly word: string };

/** What stands on labels, in lower case, for each system; the longest that fits is taken. */
const SYSTEMS: Readonly<Record<YarnSystem, readonly string[]>> = {
  tex: ['tex', 'tt', 'g/km'],
  dtex: ['dtex', 'decitex', 'dt'],
  den: ['denier', 'deniers', 'den', 'td', 'd'],
  jute: ['jute', 'spyndle', 'lb/spyndle'],
  dram: ['drams', 'dram', 'drm'],
  Nm: ['nm', 'metric count', 'metric', 'm/g'],
  Ne: ['nec', 'neb', 'ne', 'english cotton', 'cotton count', 'cc'],
  NeL: ['linen lea', 'nel', 'lea', 'leas', 'linen count'],
  NeK: ['nek', 'new', 'worsted count', 'worsted', 'wc'],
  run: ['woollen run', 'woolen run', 'wool run', 'run', 'runs', 'wr'],
  skein: ['yorkshire skein', 'yorkshire skeins', 'skein', 'skeins', 'ysw'],
  cut: ['woollen cut', 'cut', 'cuts'],
  'yd/lb': ['yd/lb', 'yds/lb', 'yards/lb', 'yards per pound', 'ypp'],
  'metric ticket': ['metric ticket', 'ticket metric', 'metric tkt', 'tkt metric'],
  'cotton ticket': ['cotton ticket', 'ticket cotton', 'cotton tkt', 'tkt cotton'],
};

const OTHERS: Readonly<Record<string, Token>> = {
  ticket: { is: 'ticket' },
  tkt: { is: 'ticket' },
  'ticket no': { is: 'ticket' },
  'spun silk': { is: 'spun-silk' },
  resultant: { is: 'resultant' },
  r: { is: 'resultant' },
  ply: { is: 'ply' },
  fold: { is: 'ply' },
  f: { is: 'filaments' },
  filaments: { is: 'filaments' },
  x: { is: 'sign', sign: 'x' },
};

/** Say nothing about thickness: 'No 40', '80s', '40's', a twist such as S600 or Z, and what the thread is spun of. */
const SILENT =
  /^(?:(?:no|nr|size|count|of|thread|yarn|linen|flax|cotton|silk|wool|viscose|rayon|polyester|nylon)(?!\p{L})|n°|['’]?s(?!\p{L})\s*\d*|z(?!\p{L})\s*\d*|-(?=\p{L})|[.\s])/u;

const WORDS: readonly (readonly [string, Token])[] = [
  ...Object.entries(SYSTEMS).flatMap(([system, words]) =>
    words.map((word): readonly [string, Token] => [word, { is: 'system', system: system as YarnSystem }]),
  ),
  ...Object.entries(OTHERS),
].sort(([a], [b]) => b.length - a.length);

/** A label cut into its pieces, in their order. Words may touch numbers: '120den', 'R69.3'. */
export function tokens(label: string): Token[] {
  const found: Token[] = [];
  let rest = label
    .toLowerCase()
    .replace(/[×✕∗*]/g, 'x')
    .replace(/[\u2044\u2215]/g, '/')
    .replace(/\s+/g, ' ')
    .trim();
  while (rest !== '') {
    const [text, token] = nextToken(rest);
    if (token) found.push(token);
    rest = rest.slice(text.length);
  }
  return found;
}

function nextToken(rest: string): readonly [string, Token | null] {
  const number = /^(?:\d[\d.,]*\d|\d|[.,]\d[\d.,]*)/.exec(rest)?.[0];
  if (number) return [number, { is: 'number', value: Number(number.replace(',', '.')), text: number }];
  for (const [word, token] of WORDS) {
    if (rest.startsWith(word) && !/^\p{L}/u.test(rest.slice(word.length))) return [word, token];
  }
  const silent = SILENT.exec(rest)?.[0];
  if (silent) return [silent, null];
  const sign = rest.charAt(0);
  if (sign === '/' || sign === '+' || sign === ';') return [sign, { is: 'sign', sign }];
  const word = /^\p{L}+/u.exec(rest)?.[0] ?? rest.slice(0, [...rest][0]!.length);
  return [word, { is: 'unknown', word }];
}

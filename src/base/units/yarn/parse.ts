import { done, failed, type Result } from '../../result.ts';
import { formatNumber } from '../format-length.ts';
import { isTicket, type YarnSystem, yarnSystems } from './system.ts';
import type { YarnTrouble } from './trouble.ts';
import { type Token, tokens } from './words.ts';
import { type FoldedHabit, foldedYarn, plies, resultantTex, type Strands, type Yarn } from './yarn.ts';

/** What is taken for granted where the label does not tell. */
export interface LabelReading {
  /** The system of a bare number such as 80/2; where it is not given, a bare number is refused. */
  readonly plain?: YarnSystem;
  /** Which thread the number before the stroke counts: 'strand' unless told. */
  readonly habit?: FoldedHabit;
}

/** Finest and thickest thread that is believed, tex, and the most strands. */
const LEAST_TEX = 0.05;
const MOST_TEX = 50_000;
const MOST_STRANDS = 200;
const MOST_LETTERS = 80;

/**
 * The thread that a label tells of: `Ne 80/2`, `2/80s cotton count`, `80/2 NeL`, `16 tex x 2`, `R69.3 tex`, `120 den`,
 * `Ne 40 + 80 + 120`, `34 tex S600 x 2 Z400; R69.3 tex`. Twist and numbers of filaments are passed over. Point and
 * comma are both the decimal mark. `spun silk 60/2` is read by silk's own habit.
 */
export function parseYarn(label: string, reading: LabelReading = {}): Result<Yarn, YarnTrouble> {
  const text = label.trim().slice(0, MOST_LETTERS);
  if (text === '') return failed({ kind: 'empty' });
  if (label.trim().length > MOST_LETTERS) return failed({ kind: 'not-a-fold', text });
  const parts = split(tokens(text), ';').map(withoutSpareWords);
  const trouble = wordTrouble(parts.flat(), text);
  if (trouble) return failed(trouble);

  const told = systemOf(parts.flat());
  const silk = parts.flat().some(({ is }) => is === 'spun-silk');
  const system = told ?? (silk ? 'Ne' : reading.plain);
  if (system === undefined) return failed({ kind: 'no-system', text, works: withSystem(text) });
  const habit = silk ? 'whole' : (reading.habit ?? 'strand');
  const read: Reading[] = [];
  for (const part of parts) {
    const one = readPart(part, system, habit, text);
    if (!one.ok) return one;
    read.push(one.value);
  }
  return joined(read, system, text);
}

/** One half of a label: strands, or the whole thread's own tex and of how many strands it is. */
interface Reading {
  readonly yarn: Yarn;
  readonly whole: boolean;
}

/** Strands and whole told together ("34 tex x 2; R69.3 tex"): the whole is what was measured. */
function joined(read: readonly Reading[], system: YarnSystem, text: string): Result<Yarn, YarnTrouble> {
  const [first, second] = read;
  if (!first || read.length > 2 || first.whole === second?.whole) return failed({ kind: 'not-a-fold', text });
  if (!second) return inRange(first.yarn);
  const [whole, parts] = first.whole ? [first.yarn, second.yarn] : [second.yarn, first.yarn];
  // A single in the second half is one of the strands that the first half counted: "R69.3 tex Z400/2; 34 tex".
  const number = plies(parts) === 1 ? plies(whole) : 1;
  const strands = parts.strands.map((strand) => ({ ...strand, number: strand.number * number }));
  const reckoned = resultantTex(strands);
  // Twisting together shortens by a few per cent; a fifth is more than any thread for lace takes up.
  if (whole.tex < 0.97 * reckoned || whole.tex > 1.2 * reckoned) {
    return failed({ kind: 'resultant-disagrees', told: whole.tex, reckoned });
  }
  return inRange({ strands, tex: whole.tex, resultantTold: true, system });
}

function readPart(
  part: readonly Token[],
  system: YarnSystem,
  habit: FoldedHabit,
  text: string,
): Result<Reading, YarnTrouble> {
  const whole = part.some(({ is }) => is === 'resultant');
  const asWhole = whole ? 'whole' : habit;
  const strands: Strands[] = [];
  let yarn: Yarn | undefined;
  const terms = split(part.filter(isSize), '+');
  for (const term of terms) {
    const fold = foldOf(term, system, whole, text);
    if (!fold.ok) return fold;
    if (!(fold.value.count > 0)) return failed({ kind: 'no-number', text });
    if (fold.value.plies > MOST_STRANDS) {
      return failed({ kind: 'strands-out-of-range', strands: fold.value.plies, most: MOST_STRANDS });
    }
    yarn = foldedYarn(system, fold.value.count, fold.value.plies, asWhole);
    strands.push(...yarn.strands);
  }
  if (!yarn) return failed({ kind: 'no-number', text });
  const all =
    terms.length === 1 ? yarn : { strands, tex: resultantTex(strands), resultantTold: false, system };
  return done({ yarn: { ...all, resultantTold: all.resultantTold || whole }, whole });
}

/** The number and how many strands, of `80/2`, `2/80`, `80/2/3`, `16 x 2`, `80 2-ply` or `80`. */
function foldOf(
  term: readonly Token[],
  system: YarnSystem,
  whole: boolean,
  text: string,
): Result<{ count: number; plies: number }, YarnTrouble> {
  const ply = term.findIndex(({ is }) => is === 'ply');
  const before = term[ply - 1];
  if (ply >= 0) {
    const rest = term.filter((_, i) => i !== ply && i !== ply - 1);
    const [count] = rest;
    if (before?.is !== 'number' || count?.is !== 'number' || rest.length > 1) {
      return failed({ kind: 'not-a-fold', text });
    }
    return foldIfWhole(count.value, before.value, text);
  }
  const numbers: number[] = [];
  const signs: string[] = [];
  for (const [i, token] of term.entries()) {
    if (i % 2 === 0 && token.is === 'number') numbers.push(token.value);
    else if (i % 2 === 1 && token.is === 'sign') signs.push(token.sign);
    else return failed(i === 0 ? { kind: 'no-number', text } : { kind: 'not-a-fold', text });
  }
  const [first, second, third = 1] = numbers;
  if (first === undefined) return failed({ kind: 'no-number', text });
  if (numbers.length !== signs.length + 1 || numbers.length > 3) return failed({ kind: 'not-a-fold', text });
  if (second === undefined) return done({ count: first, plies: 1 });
  if (isTicket(system)) {
    return failed({ kind: 'ticket-strands', works: [`${system} ${formatNumber(first, 3)}`] });
  }
  if (signs.includes('/') && yarnSystems[system].direct && !whole) {
    const [count, behind] = [formatNumber(first, 3), formatNumber(second, 3)];
    // Raw silk is sold between two limits, as 20/22 denier.
    const between =
      second > first && second < 1.5 * first ? [`${formatNumber((first + second) / 2, 3)} ${system}`] : [];
    return failed({
      kind: 'stroke',
      text,
      works: [
        ...between,
        `${count} ${system} x ${behind}`,
        `${count} ${system} f ${behind}`,
        `R${count} ${system}/${behind}`,
      ],
    });
  }
  // Some trades write the strands first (2/80s), others behind: the strands are the smaller number.
  const strandsFirst = numbers.length === 2 && first < second && Number.isInteger(first);
  return strandsFirst ? foldIfWhole(second, first, text) : foldIfWhole(first, second * third, text);
}

const foldIfWhole = (count: number, plies: number, text: string) =>
  Number.isInteger(plies) && plies >= 1
    ? done({ count, plies })
    : failed({ kind: 'not-a-fold', text } as const);

function inRange(yarn: Yarn): Result<Yarn, YarnTrouble> {
  const strands = plies(yarn);
  if (strands > MOST_STRANDS) return failed({ kind: 'strands-out-of-range', strands, most: MOST_STRANDS });
  return yarn.tex >= LEAST_TEX && yarn.tex <= MOST_TEX
    ? done(yarn)
    : failed({ kind: 'tex-out-of-range', tex: yarn.tex, least: LEAST_TEX, most: MOST_TEX });
}

function wordTrouble(all: readonly Token[], text: string): YarnTrouble | null {
  const systems = new Set<YarnSystem>();
  for (const token of all) {
    if (token.is === 'unknown') return { kind: 'unknown-word', text, word: token.word };
    if (token.is === 'system') systems.add(token.system);
    if (token.is === 'number' && !/^\d*[.,]?\d*$/.test(token.text))
      return { kind: 'two-marks', number: token.text };
  }
  const [one, two] = systems;
  if (one && two) return { kind: 'two-systems', text, systems: [one, two] };
  const number = all.find((token) => token.is === 'number');
  if (!number) return { kind: 'no-number', text };
  if (all.some(({ is }) => is === 'ticket')) {
    return { kind: 'which-ticket', works: [`metric ticket ${number.text}`, `cotton ticket ${number.text}`] };
  }
  return null;
}

const systemOf = (all: readonly Token[]): YarnSystem | undefined =>
  all.find((token) => token.is === 'system')?.system;

const withSystem = (text: string): string[] =>
  (['NeL', 'Ne', 'Nm'] as const).map((system) => `${text} ${system}`);

const isSize = ({ is }: Token): boolean => is === 'number' || is === 'sign' || is === 'ply';

/** Without how many filaments there are in a strand: 'f 48'. */
function withoutSpareWords(part: readonly Token[]): Token[] {
  return part.filter((token, i) => {
    if (token.is === 'filaments') return false;
    return !(token.is === 'number' && part[i - 1]?.is === 'filaments');
  });
}

function split(all: readonly Token[], sign: ';' | '+'): Token[][] {
  const parts: Token[][] = [[]];
  for (const token of all) {
    if (token.is === 'sign' && token.sign === sign) parts.push([]);
    else parts.at(-1)!.push(token);
  }
  return parts.filter((part) => part.length > 0);
}

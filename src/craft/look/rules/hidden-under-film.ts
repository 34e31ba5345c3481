import type { Film } from '#base/colour/film.ts';
import { type LinearRgb, parseHex, toHex } from '#base/colour/srgb.ts';
import { lineContrast, tintDifference, visibleTint, WHITE_PAPER } from '#base/colour/visible.ts';
import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';
import { capital, sayNumber } from '../say.ts';
import type { Survey } from '../survey.ts';

/**
 * Three ways for film to hide a marking: lines too pale for the paper, a tint too pale for it, and a tint so deep that
 * the lines on it drown. Each is judged through the film that treats it worst.
 */
export const hiddenUnderFilm: Rule = {
  id: 'hidden-under-film',
  title: 'A tint or a line that the film would hide',
  look: (survey) => {
    const { pattern, options } = survey;
    const ink = parseHex(options.lineInk);
    if (ink === null) throw new RangeError(`hidden-under-film: no colour '${options.lineInk}'`);
    if (options.films.length === 0) return [];
    // The pattern's schema lets no other tint through than '#rrggbb'.
    const tints = pattern.areas.flatMap(({ tint }) => (tint === undefined ? [] : (parseHex(tint) ?? [])));
    return [
      ...(pattern.marks.length > 0 ? paleLines(ink, survey) : []),
      ...[...new Set(tints.map(toHex))].flatMap((hex) => [
        ...paleTint(hex, survey),
        ...drownedLines(hex, ink, survey),
      ]),
    ];
  },
};

function paleLines(ink: LinearRgb, { options }: Survey): Finding[] {
  const worst = worstOf(options.films, (film) => lineContrast(ink, WHITE_PAPER, film));
  if (worst.value >= options.leastLineContrast) return [];
  return [
    {
      ...wholePattern,
      measured: { value: worst.value, unit: 'ratio' },
      allowed: { value: options.leastLineContrast, unit: 'ratio' },
      sentence: `Lines printed in ${options.lineInk} would be hard to see under ${worst.film} film: contrast ${sayNumber(worst.value)} to 1, and ${sayNumber(options.leastLineContrast)} to 1 is the least for a line. Print them darker.`,
    },
  ];
}

function paleTint(hex: string, { options }: Survey): Finding[] {
  const tint = parseHex(hex)!;
  const worst = worstOf(options.films, (film) => tintDifference(tint, film));
  if (worst.value >= options.leastTintDifference) return [];
  return [
    {
      ...wholePattern,
      measured: { value: worst.value, unit: 'difference' },
      allowed: { value: options.leastTintDifference, unit: 'difference' },
      sentence: `The tint ${hex} would hardly show under ${worst.film} film: it differs from the paper by ${sayNumber(worst.value)}, and ${sayNumber(options.leastTintDifference)} is needed to see it at a glance. ${advice(tint, options.films)}`,
    },
  ];
}

function drownedLines(hex: string, ink: LinearRgb, { options }: Survey): Finding[] {
  const tint = parseHex(hex)!;
  const worst = worstOf(options.films, (film) => lineContrast(ink, tint, film));
  if (worst.value >= options.leastLineContrast) return [];
  return [
    {
      ...wholePattern,
      measured: { value: worst.value, unit: 'ratio' },
      allowed: { value: options.leastLineContrast, unit: 'ratio' },
      sentence: `Lines on the tint ${hex} would drown under ${worst.film} film: contrast ${sayNumber(worst.value)} to 1, and ${sayNumber(options.leastLineContrast)} to 1 is the least for a line. ${advice(tint, options.films)}`,
    },
  ];
}

const wholePattern = { rule: 'hidden-under-film', severity: 'warning', at: null, pins: [] } as const;

function worstOf(films: readonly Film[], judge: (film: Film) => number): { film: string; value: number } {
  const judged = films.map((film) => ({ film: film.name, value: judge(film) }));
  return judged.reduce((one, other) => (other.value < one.value ? other : one));
}

function advice(tint: LinearRgb, films: readonly Film[]): string {
  const better = visibleTint(tint, films);
  return better === null ? 'Use a clearer film.' : capital(`use ${toHex(better)} or another clear tint.`);
}

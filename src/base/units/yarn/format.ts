import { formatNumber } from '../format-length.ts';
import { countOfTex, type YarnSystem, yarnSystems } from './system.ts';
import { plies, type Yarn } from './yarn.ts';

/** A count as labels write it, rounded to three figures: '80 NeL', '13.3 Ne', '41.3 tex'. */
export const formatCount = (tex: number, system: YarnSystem): string =>
  `${figures(countOfTex(tex, system))} ${system}`;

/**
 * A thread in a system's own notation: '80/2 NeL' where strands are counted, '16 tex x 2' where they are weighed, and
 * 'R69.3 tex/2' where the label tells of the whole thread.
 */
export function formatYarn(yarn: Yarn, system: YarnSystem = yarn.system): string {
  const number = plies(yarn);
  if (number === 1) return formatCount(yarn.tex, system);
  if (yarn.resultantTold) return `R${formatCount(yarn.tex, system)}/${number}`;
  const counts = yarn.strands.flatMap((strand) =>
    Array<string>(strand.number).fill(figures(countOfTex(strand.tex, system))),
  );
  if (counts.some((count) => count !== counts[0])) return `${counts.join(' + ')} ${system}`;
  return yarnSystems[system].direct
    ? `${counts[0]} ${system} x ${number}`
    : `${counts[0]}/${number} ${system}`;
}

/** Three figures, without exponent. */
function figures(count: number): string {
  const places = Math.min(6, Math.max(0, 2 - Math.floor(Math.log10(count))));
  return formatNumber(count, places);
}

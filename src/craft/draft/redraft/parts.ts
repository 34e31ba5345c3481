import type { Pattern } from '#pattern/pattern.ts';
import { mergedFields, type Three } from './records.ts';

/** What is no list: as the hand set it, or else as it is drafted anew. */
export function mergedParts({ old, mine, fresh }: Three<Pattern>, stand: ReadonlySet<string>) {
  const { unit, scale, repeat, sheet, paper } = mergedFields<Partial<Pattern>>({
    old: partsOf(old),
    mine: partsOf(mine),
    fresh: partsOf(fresh),
  }) as Pick<Pattern, 'unit' | 'scale' | 'repeat' | 'sheet' | 'paper'>;
  const stood = Object.entries(paper?.stood ?? {}).filter(([id]) => stand.has(id));
  return {
    unit,
    scale,
    ...(repeat && { repeat }),
    ...(sheet && { sheet }),
    ...(paper && { paper: { ...paper, ...(paper.stood && { stood: Object.fromEntries(stood) }) } }),
  };
}

const partsOf = ({ unit, scale, repeat, sheet, paper }: Pattern): Partial<Pattern> => ({
  unit,
  scale,
  ...(repeat && { repeat }),
  ...(sheet && { sheet }),
  ...(paper && { paper }),
});

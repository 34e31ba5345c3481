import type { FigureSet } from '#jobs/draft/set.ts';
import { badOption } from './bad-option.ts';

/** `--set headside.pins=9`, and again for each figure. */
export function figureSet(text: string, before: readonly FigureSet[] = []): readonly FigureSet[] {
  const at = text.indexOf('=');
  if (at < 1) badOption('--set', text, 'a figure and what it becomes, such as spacing=4mm or repeats=12');
  return [...before, { path: text.slice(0, at).trim(), text: text.slice(at + 1).trim() }];
}

import { type Part, partsOf } from '#jobs/draft/parts.ts';
import { figureName } from '#jobs/words/figure-names.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import { type Figure, figuresOf } from '#pattern/recipe/walk.ts';

/** Figures that are seen and changed together. */
export interface FigureGroup {
  /** Path of the part that they belong to; empty for the whole lace. */
  readonly path: string;
  readonly title: string;
  /** In the order of the recipe. */
  readonly entries: readonly GroupEntry[];
  /** Single figures that were left out and can be put in. */
  readonly absent: readonly Part[];
}

export type GroupEntry =
  | { readonly kind: 'figure'; readonly figure: Figure; readonly canBeLeftOut: boolean }
  | { readonly kind: 'part'; readonly part: Part };

/** The figures of a recipe as they are shown: the whole lace first, then part by part, and last what can be put in. */
export function figureGroups(recipe: Recipe): FigureGroup[] {
  const parts = new Map(partsOf(recipe).map((part) => [part.path, part]));
  const groups = new Map<string, { entries: GroupEntry[]; absent: Part[] }>();
  const at = (path: string) => {
    const group = groups.get(path) ?? { entries: [], absent: [] };
    groups.set(path, group);
    return group;
  };
  for (const part of parts.values()) {
    const isTop = groupOf(`${part.path}.kind`) === part.path;
    if (part.kinds.length > 0) {
      const group = part.now === null && isTop ? MORE : groupOf(`${part.path}.kind`);
      at(group).entries.push({ kind: 'part', part });
    } else if (part.now === null && !isOfCurve(part.path)) {
      if (part.takes?.kind === 'yes-or-no') {
        const figure = { path: part.path, value: false, takes: part.takes, means: part.means };
        at(groupOf(part.path)).entries.push({ kind: 'figure', figure, canBeLeftOut: false });
      } else at(groupOf(part.path)).absent.push(part);
    }
  }
  for (const figure of figuresOf(recipe)) {
    const saysKind = figure.takes.kind === 'word' && figure.takes.words.length === 1;
    if (saysKind || isOfCurve(figure.path)) continue;
    const canBeLeftOut = figure.takes.kind !== 'yes-or-no' && (parts.get(figure.path)?.canBeLeftOut ?? false);
    at(groupOf(figure.path)).entries.push({ kind: 'figure', figure, canBeLeftOut });
  }
  return [...groups]
    .map(([path, group]) => ({ path, title: titleOf(path, parts.get(path)?.now), ...group }))
    .sort((one, other) => rank(one.path) - rank(other.path));
}

/** Stands for all that is left out and can be put in. */
export const MORE = '+';

/** 'Headside: fans'. */
const titleOf = (path: string, kind: string | null | undefined): string =>
  path === ''
    ? 'The whole lace'
    : path === MORE
      ? 'What can be put in'
      : `${figureName(path)}${kind ? `: ${kind}` : ''}`;

const rank = (path: string): number => (path === '' ? 0 : path === MORE ? 2 : 1);

/** 'headside.pins' belongs to the headside, 'areas.0.size' to that area, 'spacing' to the whole lace. */
export function groupOf(path: string): string {
  const [first, second, ...rest] = path.split('.');
  if (second === undefined) return '';
  return /^\d+$/.test(second) ? (rest.length > 0 ? `${first}.${second}` : '') : first!;
}

/** Guiding points are seen and changed on the sheet, and in a list of their own. */
const isOfCurve = (path: string): boolean =>
  /\.(?:through|outline|curves)\.|\.course\.|^joins\.|^leaves\.\d+\.(?:from|to)\./.test(path);

import type { LibraryEntry } from '#craft/draft/library/entry.ts';
import { countInWords, numberInWords } from '#jobs/words/number.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfPins } from '#pattern/pins.ts';
import { figuresOf } from '#pattern/recipe/walk.ts';

/** docs/gallery.md: every pattern of the library with its picture, its figures and how to draft it. */
export const galleryPage = (
  drafted: readonly { readonly entry: LibraryEntry; readonly pattern: Pattern }[],
): string => `${INTRODUCTION}\n${drafted.map(({ entry, pattern }) => section(entry, pattern)).join('\n')}`;

const INTRODUCTION = `# The gallery

Every pattern of the library, drafted as its recipe stands. All were made up for this project; maker, source and
permission stand in each. Draft one, change its figures ([draft](draft.md) says how), and make it yours. The patterns
themselves are in [examples/drafted](../examples/drafted).

Long strips are shown lying on their side, the footside at the bottom.
`;

function section({ name, title, about, recipe }: LibraryEntry, pattern: Pattern): string {
  const { left, right, top, bottom } = boxOfPins(pattern);
  const size = `${numberInWords(right - left, 1)} mm across and ${numberInWords(bottom - top, 1)} mm down`;
  // The points of a drawn outline say more as a picture than as numbers.
  const figures = figuresOf(recipe).filter(({ path }) => !/\.outline\.\d+\./.test(path));
  const rows = figures.map(
    ({ path, value, means }) => `| \`${path}\` | ${value} | ${(means ?? '').replaceAll('|', '\\|')} |`,
  );
  return [
    `## ${title}`,
    '',
    `![${title}](images/gallery-${name}.png)`,
    '',
    ...(about.notes === undefined ? [] : [about.notes, '']),
    `${countInWords(pattern.pins.length, 'pin')}, ${size}.`,
    '',
    `    pinlight draft ${name} -o ${name}.json`,
    '',
    '| figure | is | what it means |',
    '| --- | --- | --- |',
    ...rows,
    '',
  ].join('\n');
}

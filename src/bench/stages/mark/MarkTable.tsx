import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { boxOf } from '#base/geometry/box.ts';
import { allPlaces, type PlaceOf } from '#paper/ink/places.ts';
import { stitchNames } from '#paper/ink/tints.ts';
import { anchorsOf } from '#pattern/anchors.ts';
import type { Anchor, Mark, Pattern } from '#pattern/pattern.ts';
import { PageSteps, usePages } from '../../parts/Pages.tsx';
import { Revealed } from '../../parts/Revealed.tsx';
import { SelectField } from '../../parts/SelectField.tsx';
import { usePlaces } from '../../parts/use-places.ts';
import type { Chosen } from './marking.ts';
import { drawnNames } from './wishes.ts';

/** A mark or an area, as the table tells of it. */
export interface Listed extends Chosen {
  readonly kind: Mark['kind'] | 'area';
  /** What it says, where it says something. */
  readonly words: string;
  readonly anchors: readonly Anchor[];
}

/** All areas and markings of a pattern. */
export const listOf = ({ marks, areas }: Pattern): Listed[] => [
  ...areas.map(({ id, outline, stitch, name }): Listed => {
    const words = name ? `“${name}”` : stitch ? stitchNames[stitch] : '';
    return { list: 'areas', id, kind: 'area', words, anchors: outline };
  }),
  ...marks.map((mark): Listed => {
    const { id, kind } = mark;
    return { list: 'marks', id, kind, words: wordsOf(mark), anchors: anchorsOf(mark) };
  }),
];

/** All markings as a table, a page at a time, for whoever would rather read than look. */
export function MarkTable({
  pattern,
  placeOf,
  chosen,
  onChoose,
}: {
  readonly pattern: Pattern;
  readonly placeOf: PlaceOf;
  readonly chosen: Chosen | null;
  readonly onChoose: (listed: Listed) => void;
}) {
  const shown = usePlaces(pattern.unit);
  const [kind, setKind] = useState<Listed['kind'] | 'all'>('all');
  const all = useMemo(() => listOf(pattern), [pattern]);
  const kinds = [...new Set(all.map((one) => one.kind))];
  const listed = kinds.some((one) => one === kind) ? all.filter((one) => one.kind === kind) : all;
  const pages = usePages(listed);
  const { first, last, count } = pages;
  const where = ({ anchors }: Listed): string => {
    const places = allPlaces(anchors, placeOf);
    if (!places) return '';
    const { left, top } = boxOf(places);
    return `${shown(left)}, ${shown(top)}`;
  };
  return (
    <section>
      <Revealed show="Show the markings as a table" putAway="Put the table away">
        {() => (
          <>
            <SelectField
              label="Show"
              value={kind}
              choices={[
                { value: 'all', words: 'All markings' },
                ...kinds.map((one) => ({ value: one, words: drawnNames[one] })),
              ]}
              onChange={(wanted) => {
                setKind(wanted as Listed['kind'] | 'all');
                pages.goTo(0);
              }}
            />
            <table className="table">
              <caption>
                {count === 0 ? 'No markings yet' : `Markings ${first + 1} to ${last} of ${count}`}
              </caption>
              <thead>
                <tr>
                  <th scope="col">Marking</th>
                  <th scope="col">Across, down</th>
                </tr>
              </thead>
              <tbody>
                {pages.shown.map((one, index) => (
                  <tr
                    key={`${one.list} ${one.id}`}
                    aria-current={(one.list === chosen?.list && one.id === chosen.id) || undefined}
                  >
                    <th scope="row">
                      <Button className="button quiet" onPress={() => onChoose(one)}>
                        {first + index + 1}: {drawnNames[one.kind]} {one.words}
                      </Button>
                    </th>
                    <td>{where(one)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
            <PageSteps pages={pages} />
          </>
        )}
      </Revealed>
    </section>
  );
}

/** What a marking says, where it says something. */
function wordsOf(mark: Mark): string {
  if (mark.kind === 'number') return `${mark.value}`;
  if (mark.kind === 'text') return `“${mark.text}”`;
  return mark.kind === 'arrow' && mark.label ? `“${mark.label}”` : '';
}

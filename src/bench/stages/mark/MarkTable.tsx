import { useState } from 'react';
import { Button } from 'react-aria-components';
import { boxOf } from '#base/geometry/box.ts';
import { allPlaces, type PlaceOf } from '#paper/ink/places.ts';
import { anchorsOf } from '#pattern/anchors.ts';
import type { Mark } from '#pattern/pattern.ts';
import { usePreferences } from '../../settings/preferences.ts';
import { markNames } from './wishes.ts';

const PAGE = 50;

/** All markings as a table, a page at a time, for whoever would rather read than look. */
export function MarkTable({
  marks,
  placeOf,
  chosen,
  onChoose,
}: {
  readonly marks: readonly Mark[];
  readonly placeOf: PlaceOf;
  readonly chosen: string | null;
  readonly onChoose: (mark: Mark) => void;
}) {
  const { shown } = usePreferences();
  const [open, setOpen] = useState(false);
  const [kind, setKind] = useState<Mark['kind'] | 'all'>('all');
  const [page, setPage] = useState(0);
  const kinds = [...new Set(marks.map((mark) => mark.kind))];
  const listed = kinds.includes(kind as Mark['kind']) ? marks.filter((mark) => mark.kind === kind) : marks;
  const pages = Math.max(1, Math.ceil(listed.length / PAGE));
  const first = Math.min(page, pages - 1) * PAGE;
  const where = (mark: Mark): string => {
    const places = allPlaces(anchorsOf(mark), placeOf);
    if (!places) return '';
    const { left, top } = boxOf(places);
    return `${shown(left)}, ${shown(top)}`;
  };
  return (
    <section>
      <Button className="button" aria-expanded={open} onPress={() => setOpen(!open)}>
        {open ? 'Put the table away' : 'Show the markings as a table'}
      </Button>
      {open && (
        <>
          <div className="field">
            <label htmlFor="listed-kind">Show</label>
            <select
              id="listed-kind"
              value={kind}
              onChange={({ target }) => {
                setKind(target.value as Mark['kind'] | 'all');
                setPage(0);
              }}
            >
              <option value="all">All markings</option>
              {kinds.map((one) => (
                <option key={one} value={one}>
                  {markNames[one]}
                </option>
              ))}
            </select>
          </div>
          <table className="table">
            <caption>
              {listed.length === 0
                ? 'No markings yet'
                : `Markings ${first + 1} to ${Math.min(first + PAGE, listed.length)} of ${listed.length}`}
            </caption>
            <thead>
              <tr>
                <th scope="col">Marking</th>
                <th scope="col">Across, down</th>
              </tr>
            </thead>
            <tbody>
              {listed.slice(first, first + PAGE).map((mark, index) => (
                <tr key={mark.id} aria-current={mark.id === chosen || undefined}>
                  <th scope="row">
                    <Button className="button quiet" onPress={() => onChoose(mark)}>
                      {first + index + 1}: {markNames[mark.kind]} {wordsOf(mark)}
                    </Button>
                  </th>
                  <td>{where(mark)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <div className="buttons">
            <Button className="button" isDisabled={first === 0} onPress={() => setPage(first / PAGE - 1)}>
              Before
            </Button>
            <Button
              className="button"
              isDisabled={first + PAGE >= listed.length}
              onPress={() => setPage(first / PAGE + 1)}
            >
              After
            </Button>
          </div>
        </>
      )}
    </section>
  );
}

/** What a marking says, where it says something. */
function wordsOf(mark: Mark): string {
  if (mark.kind === 'number') return `${mark.value}`;
  if (mark.kind === 'text') return `“${mark.text}”`;
  return mark.kind === 'arrow' && mark.label ? `“${mark.label}”` : '';
}

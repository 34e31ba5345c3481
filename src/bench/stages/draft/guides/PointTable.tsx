import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Guide } from '#craft/draft/guides/guide.ts';
import { figureName } from '#jobs/words/figure-names.ts';
import { Revealed } from '../../../parts/Revealed.tsx';
import { SelectField } from '../../../parts/SelectField.tsx';
import { usePreferences } from '../../../settings/preferences.ts';
import type { ChosenPoint } from './guide-tool.ts';

/** Longer lines are shown in part: a point of them is found on the sheet. */
const MOST_ROWS = 200;

/** The points of one line as a table, for whoever would rather read than look. */
export function PointTable({
  guides,
  chosen,
  onChoose,
}: {
  readonly guides: readonly Guide[];
  readonly chosen: ChosenPoint | null;
  readonly onChoose: (chosen: ChosenPoint) => void;
}) {
  const { shown } = usePreferences();
  const [wanted, setWanted] = useState(0);
  const at = Math.min(wanted, guides.length - 1);
  const guide = guides[at]!;
  return (
    <Revealed show="Show the points as a table" putAway="Put the table away">
      {() => (
        <>
          <SelectField
            label="Points of"
            value={String(at)}
            choices={guides.map(({ path }, k) => ({ value: String(k), words: figureName(path) }))}
            onChange={(value) => setWanted(Number(value))}
          />
          <table className="table">
            <caption>{guide.points.length} points; choose one to move it</caption>
            <thead>
              <tr>
                <th scope="col">Point</th>
                <th scope="col">Across</th>
                <th scope="col">Down</th>
              </tr>
            </thead>
            <tbody>
              {guide.points.slice(0, MOST_ROWS).map(({ x, y }, point) => {
                const isChosen = chosen?.guide === at && chosen.point === point;
                return (
                  <tr key={point} aria-current={isChosen || undefined}>
                    <th scope="row">
                      <Button
                        className="button quiet"
                        aria-label={`Point ${point + 1}`}
                        onPress={() => onChoose({ guide: at, point })}
                      >
                        {point + 1}
                      </Button>
                    </th>
                    <td>{shown(x)}</td>
                    <td>{shown(y)}</td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </>
      )}
    </Revealed>
  );
}

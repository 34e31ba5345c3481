import { useState } from 'react';
import { Button, Group } from 'react-aria-components';
import type { PixelPoint } from '#base/geometry/point.ts';
import { DotsField } from './DotsField.tsx';
import type { End, Places } from './ruler-tool.ts';

const NUDGES = [
  ['←', 'left', -1, 0],
  ['→', 'right', 1, 0],
  ['↑', 'up', 0, -1],
  ['↓', 'down', 0, 1],
] as const;

/** Both places as figures, and small steps for the one that is chosen: for whoever would rather type than touch. */
export function ExactPlaces({
  places,
  active,
  set,
  nudge,
}: {
  readonly places: Places;
  readonly active: End;
  readonly set: (end: End, place: PixelPoint) => void;
  readonly nudge: (columns: number, rows: number) => void;
}) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button className="button" aria-expanded={open} onPress={() => setOpen(!open)}>
        {open ? 'Put the exact places away' : 'Set the places exactly'}
      </Button>
      {open && places[active] && (
        <Group className="buttons" aria-label={`Move place ${active + 1} by one dot`} data-steps>
          {NUDGES.map(([sign, way, columns, rows]) => (
            <Button
              key={way}
              className="button"
              aria-label={`Place ${active + 1} one dot ${way}`}
              onPress={() => nudge(columns, rows)}
            >
              {sign}
            </Button>
          ))}
        </Group>
      )}
      {open &&
        ([0, 1] as const).map((end) => (
          <div key={end} className="pair">
            <DotsField
              label={`Place ${end + 1}, dots across`}
              value={places[end]?.column ?? null}
              onChange={(column) => set(end, { column, row: places[end]?.row ?? 0 })}
            />
            <DotsField
              label={`Place ${end + 1}, dots down`}
              value={places[end]?.row ?? null}
              onChange={(row) => set(end, { column: places[end]?.column ?? 0, row })}
            />
          </div>
        ))}
    </>
  );
}

import type { PixelPoint } from '#base/geometry/point.ts';
import { ArrowSteps } from '../../parts/ArrowSteps.tsx';
import { Revealed } from '../../parts/Revealed.tsx';
import { DotsField } from './DotsField.tsx';
import type { End, Places } from './ruler-tool.ts';

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
  return (
    <Revealed show="Set the places exactly" putAway="Put the exact places away">
      {() => (
        <>
          {places[active] && (
            <ArrowSteps
              label={`Move place ${active + 1} by one dot`}
              by={`Place ${active + 1} one dot`}
              look="buttons"
              onStep={nudge}
            />
          )}
          {([0, 1] as const).map((end) => (
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
      )}
    </Revealed>
  );
}

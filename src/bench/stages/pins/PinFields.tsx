import { Button } from 'react-aria-components';
import type { Pin } from '#pattern/pattern.ts';
import { usePattern } from '../../document/use-design.ts';
import { ArrowSteps } from '../../parts/ArrowSteps.tsx';
import { LengthField } from '../../parts/LengthField.tsx';
import { PlaceField } from '../../parts/PlaceField.tsx';

/** Small steps, in the pattern's unit. */
const NUDGES = { mm: [0.1, 1], px: [1, 10] } as const;

/** The chosen pin: its place and size as figures, small steps, and removing it. */
export function PinFields({
  pin,
  onChange,
  onRemove,
}: {
  readonly pin: Pin;
  readonly onChange: (pin: Pin, words: string) => void;
  readonly onRemove: () => void;
}) {
  const { unit } = usePattern();
  const { diameter = null, ...sizeless } = pin;
  return (
    <section className="offer" aria-label="The chosen pin">
      <h3>The chosen pin</h3>
      <div className="pair">
        <PlaceField
          unit={unit}
          label="Across"
          value={pin.x}
          onChange={(x) => onChange({ ...pin, x }, 'Moved a pin')}
        />
        <PlaceField
          unit={unit}
          label="Down"
          value={pin.y}
          onChange={(y) => onChange({ ...pin, y }, 'Moved a pin')}
        />
      </div>
      {NUDGES[unit].map((nudge) => (
        <ArrowSteps
          key={nudge}
          label={`Move by ${nudge} ${unit}`}
          by={`${nudge} ${unit}`}
          onStep={(x, y) => onChange({ ...pin, x: pin.x + x * nudge, y: pin.y + y * nudge }, 'Moved a pin')}
        >
          <span>
            by {nudge} {unit}
          </span>
        </ArrowSteps>
      ))}
      {unit === 'mm' && (
        <LengthField
          label="Size"
          help="how wide its dot is; may be left empty"
          value={diameter}
          onChange={(wanted) => onChange({ ...pin, diameter: wanted }, 'Changed the size of a pin')}
          onClear={() => onChange(sizeless, 'Took the size from a pin')}
        />
      )}
      <Button className="button danger" onPress={onRemove}>
        Remove this pin
      </Button>
    </section>
  );
}

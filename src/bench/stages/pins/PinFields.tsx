import { Button, Group } from 'react-aria-components';
import type { Pin } from '#pattern/pattern.ts';
import { LengthField } from '../../parts/LengthField.tsx';

const WAYS = [
  ['←', 'left', -1, 0],
  ['→', 'right', 1, 0],
  ['↑', 'up', 0, -1],
  ['↓', 'down', 0, 1],
] as const;
/** Small steps, mm. */
const NUDGES = [0.1, 1] as const;

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
  return (
    <section className="offer" aria-label="The chosen pin">
      <h3>The chosen pin</h3>
      <div className="pair">
        <LengthField
          label="Across"
          value={pin.x}
          any
          onChange={(x) => onChange({ ...pin, x }, 'Moved a pin')}
        />
        <LengthField
          label="Down"
          value={pin.y}
          any
          onChange={(y) => onChange({ ...pin, y }, 'Moved a pin')}
        />
      </div>
      {NUDGES.map((nudge) => (
        <Group key={nudge} className="steps" aria-label={`Move by ${nudge} mm`} data-steps>
          <span>by {nudge} mm</span>
          {WAYS.map(([sign, way, x, y]) => (
            <Button
              key={way}
              className="button"
              aria-label={`${nudge} mm ${way}`}
              onPress={() => onChange({ ...pin, x: pin.x + x * nudge, y: pin.y + y * nudge }, 'Moved a pin')}
            >
              {sign}
            </Button>
          ))}
        </Group>
      ))}
      <Button className="button danger" onPress={onRemove}>
        Remove this pin
      </Button>
    </section>
  );
}

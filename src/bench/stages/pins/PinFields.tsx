import { Button, Group } from 'react-aria-components';
import type { Pin } from '#pattern/pattern.ts';
import { LengthField } from '../../parts/LengthField.tsx';

const NUDGES = [
  ['←', 'left', -1, 0],
  ['→', 'right', 1, 0],
  ['↑', 'up', 0, -1],
  ['↓', 'down', 0, 1],
] as const;
const NUDGE = 0.1;

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
      <Group className="buttons" aria-label={`Move by ${NUDGE} mm`}>
        {NUDGES.map(([sign, way, x, y]) => (
          <Button
            key={way}
            className="button"
            aria-label={`${NUDGE} mm ${way}`}
            onPress={() => onChange({ ...pin, x: pin.x + x * NUDGE, y: pin.y + y * NUDGE }, 'Moved a pin')}
          >
            {sign}
          </Button>
        ))}
      </Group>
      <Button className="button danger" onPress={onRemove}>
        Remove this pin
      </Button>
    </section>
  );
}

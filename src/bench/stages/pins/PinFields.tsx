import { Button, Group } from 'react-aria-components';
import type { Pin } from '#pattern/pattern.ts';
import { usePattern } from '../../document/use-design.ts';
import { PlaceField } from '../../parts/PlaceField.tsx';

const WAYS = [
  ['←', 'left', -1, 0],
  ['→', 'right', 1, 0],
  ['↑', 'up', 0, -1],
  ['↓', 'down', 0, 1],
] as const;
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
        <Group key={nudge} className="steps" aria-label={`Move by ${nudge} ${unit}`} data-steps>
          <span>
            by {nudge} {unit}
          </span>
          {WAYS.map(([sign, way, x, y]) => (
            <Button
              key={way}
              className="button"
              aria-label={`${nudge} ${unit} ${way}`}
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

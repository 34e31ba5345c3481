import { Button, ToggleButton } from 'react-aria-components';
import type { PrickingPass } from '#pattern/order.ts';
import { Revealed } from '../../parts/Revealed.tsx';

/** The holes of a step one by one, for whoever stops in the middle of it. */
export function Holes({
  pass,
  done,
  onTick,
  onUntick,
}: {
  readonly pass: PrickingPass;
  readonly done: ReadonlySet<number>;
  readonly onTick: (pin: number) => void;
  readonly onUntick: () => void;
}) {
  return (
    <Revealed show="Tick off single holes" putAway="Put the single holes away">
      {() => (
        <>
          <p>In their order, from A on. A touch of a hole on the sheet does the same.</p>
          <ol className="holes" aria-label="Holes of this step">
            {pass.order.map((pin, index) => (
              <li key={pin}>
                <ToggleButton
                  className="button"
                  isSelected={done.has(pin)}
                  onChange={() => onTick(pin)}
                  aria-label={`Hole ${index + 1}, pin ${pin + 1}`}
                >
                  {done.has(pin) ? `✓ ${index + 1}` : index + 1}
                </ToggleButton>
              </li>
            ))}
          </ol>
          <Button className="button" isDisabled={!pass.order.some((pin) => done.has(pin))} onPress={onUntick}>
            None of these is done yet
          </Button>
        </>
      )}
    </Revealed>
  );
}

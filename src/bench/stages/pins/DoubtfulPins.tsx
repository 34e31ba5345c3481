import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { doubtInWords } from '#pattern/doubt-words.ts';
import type { Pin } from '#pattern/pattern.ts';

/** The pins in doubt, offered one by one. */
export function DoubtfulPins({
  pins,
  onShow,
  onKeep,
  onRemove,
}: {
  readonly pins: readonly Pin[];
  readonly onShow: (pin: Pin) => void;
  readonly onKeep: (pin: Pin) => void;
  readonly onRemove: (pin: Pin) => void;
}) {
  const [begun, setBegun] = useState(false);
  const [at, setAt] = useState(0);
  const pin = pins[Math.min(at, pins.length - 1)]!;
  // biome-ignore lint/correctness/useExhaustiveDependencies: shown when the pin changes, not when the caller is made anew.
  useEffect(() => {
    if (begun) onShow(pin);
  }, [begun, pin.id]);
  if (!begun) {
    return (
      <Button className="button main" onPress={() => setBegun(true)}>
        Go through the {pins.length} in doubt
      </Button>
    );
  }
  return (
    <section className="offer" aria-label="Pins in doubt">
      <h3>
        In doubt: {Math.min(at, pins.length - 1) + 1} of {pins.length}
      </h3>
      <p>It {(pin.doubt ?? []).map((doubt) => doubtInWords[doubt]).join(' and ')}. Is it a pin?</p>
      <div className="buttons">
        <Button className="button main" onPress={() => onKeep(pin)}>
          Yes, keep it
        </Button>
        <Button className="button danger" onPress={() => onRemove(pin)}>
          No, remove it
        </Button>
        <Button className="button quiet" onPress={() => setAt((at + 1) % pins.length)}>
          Later
        </Button>
      </div>
    </section>
  );
}

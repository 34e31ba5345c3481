import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { doubtInWords } from '#pattern/doubt-words.ts';
import type { Pin } from '#pattern/pattern.ts';
import { Message } from '../../parts/Message.tsx';

/** The pins in doubt, offered one by one, and after the last of them what comes next. */
export function DoubtfulPins({
  pins,
  onShow,
  onOver,
  onKeep,
  onRemove,
}: {
  readonly pins: readonly Pin[];
  readonly onShow: (pin: Pin) => void;
  /** The last one was answered. */
  readonly onOver: () => void;
  readonly onKeep: (pin: Pin) => void;
  readonly onRemove: (pin: Pin) => void;
}) {
  const [begun, setBegun] = useState(false);
  const [at, setAt] = useState(0);
  const pin = pins[Math.min(at, pins.length - 1)];
  const place = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: shown when the pin changes, not when the caller is made anew.
  useEffect(() => {
    if (!begun) return;
    if (pin) onShow(pin);
    else onOver();
    place.current?.scrollIntoView({ block: 'nearest' });
  }, [begun, pin?.id]);
  // What was pressed is gone: the keyboard goes on from the question, and from what is said at its end.
  const over = begun && !pin;
  useEffect(() => {
    if (begun || over) place.current?.focus();
  }, [begun, over]);
  if (!pin) {
    if (!begun) return null;
    return (
      <section ref={place} tabIndex={-1}>
        <Message kind="good">
          No pin is in doubt any more. Look whether pins are missing, or go on with “Next: Straighten”.
        </Message>
      </section>
    );
  }
  if (!begun) {
    return (
      <Button className="button main" onPress={() => setBegun(true)}>
        Go through the {pins.length} in doubt
      </Button>
    );
  }
  return (
    <section ref={place} tabIndex={-1} className="offer" aria-label="Pins in doubt">
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

import { useState } from 'react';
import { Button, FieldError, Input, Label, TextField } from 'react-aria-components';
import { readGroundAngle } from '#jobs/true/angle.ts';
import type { KnownWords } from '#jobs/true/known.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { Fold } from '../../parts/Fold.tsx';
import { LengthField } from '../../parts/LengthField.tsx';
import { Message } from '../../parts/Message.tsx';

/** What is known of the pattern before it was copied: the ground's angle, or how far two pins are apart. */
export function KnownTruth({
  pattern,
  known,
  picked,
  picking,
  onPick,
  onKnown,
}: {
  readonly pattern: Pattern;
  readonly known: KnownWords;
  /** Ids of the pins touched. */
  readonly picked: readonly string[];
  readonly picking: boolean;
  readonly onPick: () => void;
  readonly onKnown: (known: KnownWords) => void;
}) {
  const isKnown = known.angle !== undefined || known.distance !== undefined;
  const [typed, setTyped] = useState(known.angle === undefined ? '' : String(known.angle));
  const [length, setLength] = useState<number | null>(known.distance?.length ?? null);
  const angle = typed.trim() === '' ? null : readGroundAngle(typed);
  const wrongAngle = typed.trim() !== '' && angle === null;
  const [from, to] = picked;
  const distance = from !== undefined && to !== undefined && length !== null ? { from, to, length } : null;
  const [lacks, setLacks] = useState(false);
  const workOut = () => {
    const enough = !wrongAngle && (angle !== null || distance !== null);
    setLacks(!enough);
    if (enough) onKnown({ ...(angle !== null && { angle }), ...(distance && { distance }) });
  };
  const numberOf = (id: string) => pattern.pins.findIndex((pin) => pin.id === id) + 1;
  return (
    <Fold label="What copying did to it" begins={isKnown ? 'open' : 'folded'}>
      <p>
        A copy may be longer than wide, or skewed. The pins alone do not show it; one thing that you know
        does.
      </p>
      <TextField className="field" value={typed} onChange={setTyped} isInvalid={wrongAngle}>
        <Label>True angle of the ground to the footside, degrees</Label>
        <Input inputMode="decimal" autoComplete="off" />
        <FieldError>An angle is more than 0 and less than 90 degrees, such as 45.</FieldError>
      </TextField>
      <Button className="button" onPress={onPick}>
        {picked.length > 0 || picking
          ? 'Touch two other pins'
          : 'Touch two pins that you know the distance of'}
      </Button>
      {picking && (
        <p role="status">Touch {picked.length === 0 ? 'the first pin' : 'the second pin'} on the sheet.</p>
      )}
      {from !== undefined && to !== undefined && (
        <>
          <p>
            Pins {numberOf(from)} and {numberOf(to)}.
          </p>
          <LengthField label="True distance of the two pins" value={length} onChange={setLength} />
        </>
      )}
      {lacks && (
        <Message kind="caution">Type the angle, or touch two pins and type their true distance.</Message>
      )}
      <div className="buttons">
        <Button className="button main" onPress={workOut}>
          Work it out
        </Button>
        {isKnown && (
          <Button className="button" onPress={() => onKnown({})}>
            Forget it
          </Button>
        )}
      </div>
    </Fold>
  );
}

import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Pattern } from '#pattern/pattern.ts';
import { NumberField } from '../NumberField.tsx';
import type { Arranges } from './Arrange.tsx';
import { numberFrom } from './number-from.ts';

const [LEAST, MOST] = [1, 89];

/** The ground at another angle to the footside, its motifs as they are; from which, where no recipe says it. */
export function GroundAngle({ pattern, arrange }: { readonly pattern: Pattern; readonly arrange: Arranges }) {
  const { recipe } = pattern;
  const known = recipe && 'angle' in recipe && typeof recipe.angle === 'number' ? recipe.angle : null;
  const [from, setFrom] = useState<number | null>(45);
  const [to, setTo] = useState<number | null>(known ?? 52);
  const isReady = to !== null && (known !== null || from !== null);
  return (
    <>
      {known === null && (
        <NumberField
          label="The ground stands at so many degrees"
          value={45}
          onText={(text) => setFrom(numberFrom(text, LEAST, MOST))}
          keeps
        />
      )}
      <div className="asked">
        <NumberField
          label="Bring the ground to so many degrees"
          value={known ?? 52}
          onText={(text) => setTo(numberFrom(text, LEAST, MOST))}
          keeps
        />
        <Button
          className="button"
          isDisabled={!isReady}
          onPress={() =>
            to !== null &&
            arrange(
              { kind: 'ground-angle', from: known === null ? from : null, to },
              `Brought the ground to ${to} degrees`,
            )
          }
        >
          Bring it there
        </Button>
      </div>
      <small>Measured from the footside; motifs keep their shape. Torchon has 45 degrees.</small>
    </>
  );
}

import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Pattern } from '#pattern/pattern.ts';
import { LengthField } from '../../../parts/LengthField.tsx';
import { NumberField } from '../NumberField.tsx';
import type { Arranges } from './Arrange.tsx';
import { numberFrom } from './number-from.ts';

const MOST = 1000;

/** Several of the pattern, one after the other; how far apart, where the pattern does not say. */
export function Repeat({ pattern, arrange }: { readonly pattern: Pattern; readonly arrange: Arranges }) {
  const [count, setCount] = useState<number | null>(2);
  const [across, setAcross] = useState(0);
  const [down, setDown] = useState(40);
  const isWhole = count !== null && Number.isInteger(count);
  return (
    <>
      {!pattern.repeat && (
        <>
          <p>This pattern does not say how long a repeat is. Say how far each lies from the one before:</p>
          <div className="pair">
            <LengthField label="Step across" value={across} any onChange={setAcross} />
            <LengthField label="Step down" value={down} any onChange={setDown} />
          </div>
        </>
      )}
      <div className="asked">
        <NumberField
          label="How many in a row"
          value={2}
          onText={(text) => setCount(numberFrom(text, 1, MOST))}
          keeps
        />
        <Button
          className="button"
          isDisabled={!isWhole}
          onPress={() =>
            isWhole &&
            arrange(
              { kind: 'repeat', count, step: pattern.repeat ? null : { x: across, y: down } },
              `Repeated it ${count} times`,
            )
          }
        >
          Repeat
        </Button>
      </div>
    </>
  );
}

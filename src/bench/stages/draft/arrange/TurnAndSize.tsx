import { useState } from 'react';
import { Button } from 'react-aria-components';
import { NumberField } from '../NumberField.tsx';
import type { Arranges } from './Arrange.tsx';
import { numberFrom } from './number-from.ts';

/** Turning by a quarter or by any angle, and copies of another size. */
export function TurnAndSize({ arrange }: { readonly arrange: Arranges }) {
  const [degrees, setDegrees] = useState<number | null>(45);
  const [percent, setPercent] = useState<number | null>(71);
  const turn = (by: number) =>
    arrange(
      { kind: 'turn', degrees: by },
      `Turned by ${Math.abs(by)} degrees to the ${by < 0 ? 'left' : 'right'}`,
    );
  return (
    <>
      <div className="buttons">
        <Button className="button" onPress={() => turn(90)}>
          Turn right by 90°
        </Button>
        <Button className="button" onPress={() => turn(-90)}>
          Turn left by 90°
        </Button>
      </div>
      <div className="asked">
        <NumberField
          label="Degrees to the right"
          value={45}
          onText={(text) => setDegrees(numberFrom(text, -360, 360))}
          keeps
        />
        <Button
          className="button"
          isDisabled={degrees === null}
          onPress={() => degrees !== null && turn(degrees)}
        >
          Turn
        </Button>
      </div>
      <div className="asked">
        <NumberField
          label="Size in %"
          value={71}
          onText={(text) => setPercent(numberFrom(text, 1, 10_000))}
          keeps
        />
        <Button
          className="button"
          isDisabled={percent === null}
          onPress={() =>
            percent !== null &&
            arrange({ kind: 'scale', factor: percent / 100 }, `Made it ${percent} % of its size`)
          }
        >
          Make it so large
        </Button>
      </div>
      <small>Pins, holes and the card stay as thick as they are. 71 % and 141 % step one A size.</small>
    </>
  );
}

import { useState } from 'react';
import { Button, ToggleButton } from 'react-aria-components';
import type { HandRoute } from '#jobs/route.ts';
import { Choice } from '../../parts/Choice.tsx';
import type { Place } from './place.ts';
import { StepList } from './StepList.tsx';
import { type Awake, useAwake } from './use-awake.ts';

const AWAKE: Readonly<Record<Awake, string>> = {
  asked: 'The browser was asked to keep the screen awake.',
  awake: 'The screen is kept awake while this guide is open.',
  refused:
    'This device does not let the screen be kept awake just now, perhaps to spare its battery. Set it so that its screen stays on for long.',
  'unknown-here':
    'This browser cannot keep the screen awake. Set your device so that its screen stays on for long.',
};

/** How the guide is looked at, all of its steps, and beginning again. */
export function GuideFoot({
  route,
  place,
  done,
  onPlace,
  onBeginAgain,
}: {
  readonly route: HandRoute;
  readonly place: Place;
  readonly done: ReadonlySet<number>;
  readonly onPlace: (place: Place) => void;
  readonly onBeginAgain: () => void;
}) {
  const [asked, setAsked] = useState(false);
  const awake = useAwake(true);
  return (
    <section aria-label="About the guide" className="foot">
      <div className="buttons">
        <ToggleButton
          className="button"
          isSelected={place.large}
          onChange={(large) => onPlace({ ...place, large })}
        >
          Large, for beside the pillow
        </ToggleButton>
        <ToggleButton
          className="button"
          isSelected={place.follows}
          onChange={(follows) => onPlace({ ...place, follows })}
        >
          The sheet goes to each step
        </ToggleButton>
      </div>
      <Choice
        label="The card is seen"
        value={place.side}
        onChange={(side) => onPlace({ ...place, side })}
        choices={[
          { value: 'front', words: 'from the front' },
          { value: 'back', words: 'from the back', help: 'left and right change places' },
        ]}
      />
      <p role="status">{AWAKE[awake]} Your place is kept, also when this page is closed.</p>
      <StepList route={route} place={place} done={done} onGoTo={(step) => onPlace({ ...place, step })} />
      {asked ? (
        <div className="offer">
          <p>All ticks go, and the guide stands at the first step.</p>
          <div className="buttons">
            <Button className="button" onPress={() => setAsked(false)} autoFocus>
              Leave them
            </Button>
            <Button
              className="button danger"
              onPress={() => {
                setAsked(false);
                onBeginAgain();
              }}
            >
              Begin again
            </Button>
          </div>
        </div>
      ) : (
        <Button className="button quiet danger" onPress={() => setAsked(true)}>
          Begin again …
        </Button>
      )}
    </section>
  );
}

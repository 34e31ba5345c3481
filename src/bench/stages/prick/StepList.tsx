import { Button } from 'react-aria-components';
import type { HandRoute } from '#jobs/route.ts';
import { passKindInWords } from '#jobs/words/route.ts';
import { Revealed } from '../../parts/Revealed.tsx';
import type { Place } from './place.ts';
import { stepInWords } from './words.ts';

/** All steps, each a way to go there. */
export function StepList({
  route,
  place,
  done,
  onGoTo,
}: {
  readonly route: HandRoute;
  readonly place: Place;
  readonly done: ReadonlySet<number>;
  readonly onGoTo: (step: number) => void;
}) {
  return (
    <Revealed show="Show all steps" putAway="Put the list of steps away">
      {() => (
        <ol className="places steps" aria-label="All steps">
          {route.order.passes.map((pass, step) => {
            const made = pass.order.filter((pin) => done.has(pin)).length;
            const state = made === pass.order.length ? '✓ done' : made > 0 ? `${made} done` : '';
            return (
              <li key={step} aria-current={step === place.step ? 'step' : undefined}>
                <Button onPress={() => onGoTo(step)}>
                  <strong>{step + 1}</strong>
                  <span className="fill">
                    {passKindInWords[pass.kind]}. {stepInWords(pass)}
                  </span>
                  <span>{state}</span>
                </Button>
              </li>
            );
          })}
        </ol>
      )}
    </Revealed>
  );
}

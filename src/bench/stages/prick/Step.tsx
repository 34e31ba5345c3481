import { Button } from 'react-aria-components';
import type { HandEffort } from '#craft/route/effort.ts';
import type { HandRoute } from '#jobs/route.ts';
import { countInWords } from '#jobs/words/number.ts';
import { passKindInWords, timeInWords } from '#jobs/words/route.ts';
import type { PrickingPass } from '#pattern/order.ts';
import { Message } from '../../parts/Message.tsx';
import { Holes } from './Holes.tsx';
import { firstOpen } from './place.ts';
import { stepInWords } from './words.ts';

/** One step, so large that it can be read from the pillow. */
export function Step({
  route,
  step,
  pass,
  done,
  left,
  onNext,
  onBack,
  onTick,
  onUntick,
}: {
  readonly route: HandRoute;
  readonly step: number;
  readonly pass: PrickingPass;
  readonly done: ReadonlySet<number>;
  readonly left: HandEffort;
  readonly onNext: () => void;
  readonly onBack: () => void;
  readonly onTick: (pin: number) => void;
  readonly onUntick: () => void;
}) {
  const { passes } = route.order;
  const made = pass.order.filter((pin) => done.has(pin)).length;
  const settings = passes.filter(({ ruler }) => ruler !== null).length;
  const setting = passes.slice(0, step + 1).filter(({ ruler }) => ruler !== null).length;
  return (
    <section aria-label="The step at hand" className="step">
      <p className="which">
        Step {step + 1} of {passes.length}: {passKindInWords[pass.kind]}
        {pass.ruler ? `, ruler ${setting} of ${settings}` : ', by eye'}
      </p>
      <h3>{stepInWords(pass)}</h3>
      {made > 0 && (
        <p>
          {made === pass.order.length ? 'All of them are ticked off.' : `${made} of them are ticked off.`}
        </p>
      )}
      <p>Wax the needle every {countInWords(route.pace.holesPerWaxing, 'hole')}.</p>
      <div className="buttons forth">
        <Button className="button" isDisabled={step === 0} onPress={onBack}>
          Back
        </Button>
        <Button className="button main" onPress={onNext}>
          Done, next
        </Button>
      </div>
      <HolesDone route={route} done={done} left={left} />
      <Holes pass={pass} done={done} onTick={onTick} onUntick={onUntick} />
    </section>
  );
}

/** After the last step. */
export function AllDone({
  route,
  done,
  left,
  onBack,
  onGoTo,
}: {
  readonly route: HandRoute;
  readonly done: ReadonlySet<number>;
  readonly left: HandEffort;
  readonly onBack: () => void;
  readonly onGoTo: (step: number) => void;
}) {
  const { holes } = route.effort;
  return (
    <section aria-label="The end of the guide" className="step">
      {left.holes === 0 ? (
        <>
          <h3>Every hole is pricked</h3>
          <Message kind="good">
            All {countInWords(holes, 'hole')} are ticked off. Now hold the card up to the light: a hole that
            was missed shows as a gap.
          </Message>
        </>
      ) : (
        <>
          <h3>{countInWords(left.holes, 'hole')} left</h3>
          <p>This was the last step, and some earlier ones are not ticked off.</p>
          <Button className="button main" onPress={() => onGoTo(firstOpen(route.order.passes, done))}>
            To the first of them
          </Button>
        </>
      )}
      <Button className="button" onPress={onBack}>
        Back
      </Button>
      <HolesDone route={route} done={done} left={left} />
    </section>
  );
}

function HolesDone({
  route,
  done,
  left,
}: {
  readonly route: HandRoute;
  readonly done: ReadonlySet<number>;
  readonly left: HandEffort;
}) {
  const { holes } = route.effort;
  return (
    <div className="so-far">
      <progress value={done.size} max={holes} aria-label="Holes done" />
      <p>
        {done.size} of {countInWords(holes, 'hole')} done
        {left.holes > 0 && `; what is left takes ${timeInWords(left.minutes)}`}.
      </p>
    </div>
  );
}

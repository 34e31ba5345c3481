import { useEffect, useMemo, useRef, useState } from 'react';
import { boxOf, growBox, heightOf, widthOf } from '#base/geometry/box.ts';
import type { HandRoute } from '#jobs/route.ts';
import { effortLeft } from '#jobs/route-left.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { announce } from '../../parts/announce.ts';
import { useSheet } from '../../sheet/handle.ts';
import { useTool } from '../../sheet/use-tool.ts';
import { BegunAgain } from './BegunAgain.tsx';
import { GuideFoot } from './GuideFoot.tsx';
import { doneIn, firstPlace, type Place, withDone } from './place.ts';
import { PrickTool } from './prick-tool.ts';
import { AllDone, Step } from './Step.tsx';
import { seenFrom } from './seen.ts';
import { useStepKeys } from './use-step-keys.ts';
import { stepInWords } from './words.ts';

/** Two presses within this time are one. */
const REPEAT = 300;

/** The guide itself: the step at hand, large, on the sheet and in words. */
export function Guide({
  pattern,
  route,
  place,
  onPlace,
}: {
  readonly pattern: Pattern;
  readonly route: HandRoute;
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
}) {
  const sheet = useSheet();
  const { passes } = route.order;
  const step = Math.min(place.step, passes.length);
  const pass = passes[step] ?? null;
  const done = useMemo(() => doneIn(place), [place]);
  const left = useMemo(() => effortLeft(route, done), [route, done]);
  const seen = useMemo(() => seenFrom(place.side, pattern), [place.side, pattern]);
  const { pins } = seen.pattern;

  const tick = (which: readonly number[], made: boolean, to = step) => {
    const now = new Set(done);
    for (const pin of which) made ? now.add(pin) : now.delete(pin);
    onPlace({ ...withDone(place, pattern, now), step: to });
  };
  const tickOne = (pin: number) => {
    announce(done.has(pin) ? 'Not ticked off any more.' : 'Ticked off.');
    tick([pin], !done.has(pin));
  };
  /** Where the guide was when it was begun again. */
  const [ended, setEnded] = useState<Place | null>(null);
  const last = useRef(-Infinity);
  const once = (act: () => void) => () => {
    const now = performance.now();
    if (now - last.current < REPEAT) return;
    last.current = now;
    act();
  };
  const next = once(() => pass && tick(pass.order, true, step + 1));
  const back = once(() => step > 0 && onPlace({ ...place, step: step - 1 }));
  useStepKeys(next, back);

  const latest = useRef(tickOne);
  latest.current = tickOne;
  const state = { pins, pass, done, large: place.large };
  // biome-ignore lint/correctness/useExhaustiveDependencies: one tool for as long as the guide is open, told of the rest below.
  const tool = useMemo(() => new PrickTool(state, (pin) => latest.current(pin)), []);
  useTool(tool);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the state's parts are named.
  useEffect(() => {
    tool.update(state);
    sheet.redraw();
  }, [tool, sheet, pins, pass, done, place.large]);
  useEffect(() => {
    const turned = place.side === 'back';
    sheet.setDress({ markings: false, instead: turned ? seen.pattern : null });
    if (turned) sheet.showWhole();
    return () => {
      sheet.setDress({});
      // What was seen lies on the other side of the card.
      if (turned) sheet.showWhole();
    };
  }, [sheet, seen, place.side]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the sheet's size changes with `large`.
  useEffect(() => {
    if (!place.follows) return;
    if (!pass) return sheet.showWhole();
    const box = boxOf(pass.order.map((pin) => pins[pin]!));
    sheet.zoomTo(growBox(box, 3 * tool.spacing + 0.1 * Math.max(widthOf(box), heightOf(box))));
  }, [sheet, tool, pins, pass, place.follows, place.large]);
  useEffect(() => {
    if (pass) announce(stepInWords(pass));
  }, [pass]);

  const guide = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each new step is read from its top.
  useEffect(() => {
    guide.current?.closest('.panel')?.scrollTo(0, 0);
  }, [step, place.large]);

  return (
    <div ref={guide} className={place.large ? 'prick large' : 'prick'}>
      {ended && (
        <BegunAgain
          onBack={() => {
            setEnded(null);
            onPlace({ ...place, step: ended.step, done: ended.done });
          }}
          onDismiss={() => setEnded(null)}
        />
      )}
      {pass ? (
        <Step
          route={route}
          step={step}
          pass={pass}
          done={done}
          left={left}
          onNext={next}
          onBack={back}
          onTick={tickOne}
          onUntick={() => tick(pass.order, false)}
        />
      ) : (
        <AllDone
          route={route}
          done={done}
          left={left}
          onBack={back}
          onGoTo={(to) => onPlace({ ...place, step: to })}
        />
      )}
      <GuideFoot
        route={route}
        place={place}
        done={done}
        onPlace={onPlace}
        onBeginAgain={() => {
          setEnded(place);
          onPlace(firstPlace(pattern, place));
        }}
      />
    </div>
  );
}

import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import type { HandRoute } from '#jobs/route.ts';
import { countInWords } from '#jobs/words/number.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { Message } from '../../parts/Message.tsx';
import { carriedOver, doneIn, firstOpen, firstPlace, type Place } from './place.ts';

/** The pins are not those that were being pricked: what of the work still holds, and what to do about it. */
export function Changed({
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
  const carried = useMemo(() => carriedOver(place, pattern), [place, pattern]);
  const still = carried.done.length;
  const goOn = () => onPlace({ ...carried, step: firstOpen(route.order.passes, doneIn(carried)) });
  return (
    <Message kind="caution">
      <p>
        Pins were added, moved or removed since you last pricked. You had ticked off{' '}
        {countInWords(place.done.length, 'hole')}; {still} of the {pattern.pins.length} pins now stand where
        one of them is.
      </p>
      <p>To see the pins as they were, press Undo.</p>
      <div className="buttons">
        <Button className="button main" onPress={goOn}>
          Go on with {countInWords(still, 'hole')} ticked off
        </Button>
        <Button className="button" onPress={() => onPlace(firstPlace(pattern, place))}>
          Begin anew
        </Button>
      </div>
    </Message>
  );
}

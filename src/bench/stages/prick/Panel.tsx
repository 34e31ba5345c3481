import { useEffect, useMemo } from 'react';
import { Button } from 'react-aria-components';
import { revisionOfPins } from '#jobs/revision.ts';
import { useDesignState, useWork } from '../../document/use-design.ts';
import { Message } from '../../parts/Message.tsx';
import { Working } from '../../parts/Working.tsx';
import { useKept } from '../../store/use-kept.ts';
import { useJob } from '../../worker/use-job.ts';
import { Begin } from './Begin.tsx';
import { Changed } from './Changed.tsx';
import { Guide } from './Guide.tsx';
import { firstPlace, placeSchema } from './place.ts';
import './prick.css';

/** Prick: a guide to tick off beside the pillow, one step at a time. */
export function Panel() {
  const { id } = useWork();
  const { pattern } = useDesignState();
  const [job, find] = useJob('routeByHand');
  const { value: place, lost, keep } = useKept(id, 'pricking', placeSchema);
  const pins = useMemo(() => revisionOfPins(pattern), [pattern]);
  useEffect(() => void find(pattern), [find, pattern]);

  if (job.at === 'work')
    return <Working words="Finding the order of pricking" share={job.share} onCancel={job.cancel} />;
  if (job.at === 'broken') return <Message kind="trouble">{job.why}</Message>;
  if (job.at === 'rest') {
    return (
      <Button className="button main" onPress={() => find(pattern)}>
        Find the order of pricking
      </Button>
    );
  }
  const route = job.made;
  if (route.effort.holes === 0)
    return <Message kind="note">There is no hole to prick: this pattern has no pins yet.</Message>;
  if (place === undefined) return null;
  return (
    <>
      {lost && (
        <Message kind="trouble">
          This browser could not keep your place. It holds until this page is closed.
        </Message>
      )}
      {place === null ? (
        <Begin route={route} onBegin={() => keep(firstPlace(pattern, null))} />
      ) : place.pins === pins ? (
        <Guide pattern={pattern} route={route} place={place} onPlace={keep} />
      ) : (
        <Changed pattern={pattern} route={route} place={place} onPlace={keep} />
      )}
    </>
  );
}

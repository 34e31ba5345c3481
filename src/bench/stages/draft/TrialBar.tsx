import { Button } from 'react-aria-components';
import { draftInWords } from '#jobs/words/draft.ts';
import { numberInWords } from '#jobs/words/number.ts';
import { Message } from '../../parts/Message.tsx';
import { useLate } from '../../parts/use-late.ts';
import { usePreferences } from '../../settings/preferences.ts';
import { LostEdits } from './LostEdits.tsx';
import { figureInTheWay, trialTroubleInWords } from './trouble-words.ts';
import type { Trial } from './use-trial.ts';

/** What the tried figures make, or why they make nothing, and the two ways to go on. */
export function TrialBar({ trial, onKeep }: { readonly trial: Trial; readonly onKeep: () => void }) {
  const { isChanged, isBusy, isPassing, made, trouble } = trial;
  const { shown } = usePreferences();
  const isLate = useLate(isBusy && !isPassing);
  if (isPassing || (!isChanged && !trouble)) return null;
  const inTheWay = figureInTheWay(trouble);
  return (
    <section className="offer trial" aria-label="What you are trying">
      {isChanged && <h3>Tried, and not kept yet</h3>}
      {trouble && (
        <Message kind="trouble">
          <p>{trialTroubleInWords(trouble)}</p>
          {inTheWay && inTheWay.nearest !== null && (
            <Button className="button" onPress={() => trial.set(inTheWay.path, String(inTheWay.nearest))}>
              Take{' '}
              {inTheWay.unit === 'mm'
                ? shown(inTheWay.nearest)
                : `${numberInWords(inTheWay.nearest, 3)}${inTheWay.unit ? ' degrees' : ''}`}
            </Button>
          )}
        </Message>
      )}
      {isLate && <p>Drafting … Leave it to stop.</p>}
      {!isLate && !trouble && made && (
        <>
          {draftInWords({ ...made, lost: [] }).map((line) => (
            <p key={line}>{line}</p>
          ))}
          <LostEdits lost={made.lost} />
        </>
      )}
      <div className="buttons">
        {isChanged && (
          <Button className="button main" isDisabled={trouble !== null} onPress={onKeep}>
            Keep
          </Button>
        )}
        <Button className="button" onPress={trial.leave}>
          {isChanged ? 'Leave it' : 'Understood'}
        </Button>
      </div>
    </section>
  );
}

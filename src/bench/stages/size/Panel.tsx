import { useEffect, useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { percentInWords, resizedInWords } from '#jobs/words/size.ts';
import { sizeTroubleInWords } from '#jobs/words/size-trouble.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { useDesignState, useWork } from '../../document/use-design.ts';
import { announce } from '../../parts/announce.ts';
import { Message } from '../../parts/Message.tsx';
import { Working } from '../../parts/Working.tsx';
import { useThreads } from '../../store/threads.ts';
import { AnotherSize } from './AnotherSize.tsx';
import { AsItIs } from './AsItIs.tsx';
import { adviceHere } from './advice.ts';
import { type Asked, nothingAsked, wishOf } from './asked.ts';
import { NewSize } from './NewSize.tsx';
import { TableToPrint } from './TableToPrint.tsx';
import { Untold } from './Untold.tsx';
import { usePreview } from './use-preview.ts';
import { useSizing } from './use-sizing.ts';
import { YourThreads } from './YourThreads.tsx';
import './size.css';

/** Size: which thread, pins and needle suit the pattern, and the pattern made to suit a thread or a place. */
export function Panel() {
  const { design } = useWork();
  const { pattern, editable } = useDesignState();
  const threads = useThreads();
  const [asked, setAsked] = useState(nothingAsked);
  const [shown, setShown] = useState(true);
  const [said, setSaid] = useState<{ readonly pattern: Pattern; readonly words: string } | null>(null);
  const wish = useMemo(() => wishOf(asked), [asked]);
  const { last, isNewest, job, isLong, again } = useSizing(pattern, wish);
  const ask = (more: Partial<Asked>) => setAsked((before) => ({ ...before, ...more }));

  const asItIs = last?.answer.asItIs ?? null;
  const wished = last?.answer.wished ?? null;
  const sizing = wished?.ok && wish.target !== null ? wished.value : null;
  const isOther = sizing !== null && (sizing.factor !== 1 || sizing.redrafted);
  usePreview(pattern, shown && isOther ? sizing.pattern : null);
  // A number of repeats was chosen for the pattern as it was then.
  // biome-ignore lint/correctness/useExhaustiveDependencies: begins anew with each pattern.
  useEffect(() => ask({ chosen: null }), [pattern]);

  const make = () => {
    if (!sizing?.pattern || !isNewest) return;
    const words = resizedInWords(sizing);
    design.become(sizing.pattern, `To ${percentInWords(sizing.factor)} of its size`);
    announce(words);
    setSaid({ pattern: design.state().pattern, words });
    // What was measured of the old size says nothing of the new one.
    ask({ aim: 'none', factor: null, spacing: null, repeat: null, chosen: null });
  };

  return (
    <>
      {said?.pattern === pattern && <Message kind="good">{said.words}</Message>}
      {isLong && job.at === 'work' && (
        <Working words="Looking for repeats" share={job.share} onCancel={job.cancel} />
      )}
      {job.at === 'broken' && <Message kind="trouble">{job.why}</Message>}
      {job.at === 'rest' && !isNewest && (
        <Button className="button" onPress={again}>
          Reckon the size
        </Button>
      )}
      {asItIs && !asItIs.ok && (
        <Message kind="trouble">{sizeTroubleInWords(asItIs.trouble, adviceHere)}</Message>
      )}
      {asItIs?.ok && (
        <>
          <AsItIs sizing={asItIs.value} />
          <Untold asked={asked} onAsk={ask} />
          <YourThreads threads={threads} asked={asked} sizing={asItIs.value} onAsk={ask} />
          <AnotherSize asked={asked} sizing={asItIs.value} choices={last?.answer.choices ?? []} onAsk={ask}>
            {wish.target !== null && wished && !wished.ok && (
              <Message kind="caution">{sizeTroubleInWords(wished.trouble, adviceHere)}</Message>
            )}
            {sizing && (
              <NewSize
                pattern={pattern}
                sizing={sizing}
                asked={asked}
                isOther={isOther}
                isNewest={isNewest}
                editable={editable}
                shown={shown}
                onShown={setShown}
                onAsk={ask}
                onMake={make}
              />
            )}
          </AnotherSize>
          <TableToPrint
            pattern={pattern}
            asked={asked}
            wish={wish}
            threads={threads.list}
            spacing={asItIs.value.before.spacing}
          />
        </>
      )}
    </>
  );
}

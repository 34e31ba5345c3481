import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Result } from '#base/result.ts';
import type { TrueTrouble } from '#jobs/trouble.ts';
import type { KnownWords } from '#jobs/true/known.ts';
import type { Proposed } from '#jobs/true/propose.ts';
import { trueTroubleInWords } from '#jobs/words/true.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { useDesignState, useWork } from '../../document/use-design.ts';
import { announce } from '../../parts/announce.ts';
import { Message } from '../../parts/Message.tsx';
import { Working } from '../../parts/Working.tsx';
import { useJob } from '../../worker/use-job.ts';
import { Proposal } from './Proposal.tsx';
import './straighten.css';

const NOTHING_KNOWN: KnownWords = {};

interface Found {
  readonly pattern: Pattern;
  readonly known: KnownWords;
  readonly made: Result<Proposed, TrueTrouble>;
}

/** Straighten: what the pins were meant to stand on, as a proposal that is taken whole or in parts. */
export function Panel() {
  const { design } = useWork();
  const { pattern } = useDesignState();
  const [known, setKnown] = useState(NOTHING_KNOWN);
  const [found, setFound] = useState<Found | null>(null);
  const [said, setSaid] = useState<{ readonly pattern: Pattern; readonly words: string } | null>(null);
  const [job, propose] = useJob('straighten');

  const lookFor = async (pattern: Pattern, known: KnownWords) => {
    const made = await propose(pattern, known);
    if (made) setFound({ pattern, known, made });
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: begun anew when what is looked at changes, not when the panel is drawn.
  useEffect(() => void lookFor(pattern, known), [pattern, known]);

  const become = (after: Pattern, words: string) => {
    design.become(after, 'Straightened');
    announce(words);
    setKnown(NOTHING_KNOWN);
    setSaid({ pattern: design.state().pattern, words });
  };

  const now = found?.pattern === pattern && found.known === known ? found.made : null;
  return (
    <>
      {said?.pattern === pattern && <Message kind="good">{said.words}</Message>}
      {job.at === 'work' && (
        <Working words="Looking for lines, curves and grounds" share={job.share} onCancel={job.cancel} />
      )}
      {job.at === 'broken' && <Message kind="trouble">{job.why}</Message>}
      {job.at === 'rest' && !now && (
        <Button className="button main" onPress={() => lookFor(pattern, known)}>
          Look for lines, curves and grounds
        </Button>
      )}
      {now && !now.ok && (
        <Message kind="trouble">
          <p>{trueTroubleInWords(now.trouble)}</p>
          <Button className="button" onPress={() => setKnown(NOTHING_KNOWN)}>
            Go on without it
          </Button>
        </Message>
      )}
      {now?.ok && (
        <Proposal
          // A new proposal begins with what is usually taken of it.
          key={proposalNumber(now.value)}
          pattern={pattern}
          proposed={now.value}
          known={known}
          onKnown={setKnown}
          onTake={become}
        />
      )}
    </>
  );
}

const numbers = new WeakMap<Proposed, number>();
let proposals = 0;

function proposalNumber(proposed: Proposed): number {
  if (!numbers.has(proposed)) numbers.set(proposed, ++proposals);
  return numbers.get(proposed)!;
}

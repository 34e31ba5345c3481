import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { ArrangeStep } from '#jobs/arrange/steps.ts';
import { arrangedInWords } from '#jobs/words/arrange.ts';
import { troubleInWords } from '#jobs/words/trouble.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { useDesignState, useWork } from '../../../document/use-design.ts';
import { Message } from '../../../parts/Message.tsx';
import { Working } from '../../../parts/Working.tsx';
import { useSheet } from '../../../sheet/handle.ts';
import { useJob } from '../../../worker/use-job.ts';
import { GroundAngle } from './GroundAngle.tsx';
import { JoinOther } from './JoinOther.tsx';
import { Repeat } from './Repeat.tsx';
import { TurnAndSize } from './TurnAndSize.tsx';

/** Does one step of arranging to the open pattern, and calls it by these words. */
export type Arranges = (step: ArrangeStep, words: string) => void;

type Outcome = { readonly kind: 'good' | 'trouble'; readonly lines: readonly string[] };

/** The whole pattern mirrored, turned, repeated, made larger or joined to another, each in one step. */
export function Arrange({
  pattern,
  isTrying,
}: {
  readonly pattern: Pattern;
  /** Whether figures are being tried, which an arranged pattern would no longer have. */
  readonly isTrying: boolean;
}) {
  const { design } = useWork();
  const { editable } = useDesignState();
  const sheet = useSheet();
  const [job, run] = useJob('arrange');
  const [outcome, setOutcome] = useState<Outcome | null>(null);

  const arrange: Arranges = async (step, words) => {
    setOutcome(null);
    const before = design.state().pattern;
    const made = await run(before, [step]);
    if (!made || design.state().pattern !== before) return;
    if (!made.ok) return setOutcome({ kind: 'trouble', lines: [troubleInWords(made.trouble)] });
    design.become(made.value.pattern, words);
    setOutcome({
      kind: 'good',
      lines: [`${words}.`, ...arrangedInWords(made.value, before.recipe !== undefined)],
    });
    // The sheet is told of the new pattern first, and then shows all of it.
    requestAnimationFrame(() => sheet.showWhole());
  };

  return (
    <details className="figures">
      <summary>Arrange the whole pattern</summary>
      <div className="figures-within">
        <p>
          Pins that come to stand on each other become one.
          {pattern.recipe &&
            ' A pattern that is mirrored, turned, repeated or joined keeps no recipe: change its figures first.'}
        </p>
        {job.at === 'work' && <Working words="Arranging" share={job.share} onCancel={job.cancel} />}
        {job.at === 'broken' && <Message kind="trouble">It broke off. Nothing was changed.</Message>}
        {outcome && (
          <Message kind={outcome.kind} onDismiss={() => setOutcome(null)}>
            {outcome.lines.map((line) => (
              <p key={line}>{line}</p>
            ))}
          </Message>
        )}
        {isTrying && (
          <Message kind="note">
            You are trying figures that are not kept yet. Keep them, or leave them; then the pattern can be
            arranged.
          </Message>
        )}
        {editable && !isTrying && (
          <>
            <div className="buttons">
              <Button
                className="button"
                onPress={() => arrange({ kind: 'mirror', line: 90 }, 'Mirrored left and right')}
              >
                Mirror left and right
              </Button>
              <Button
                className="button"
                onPress={() => arrange({ kind: 'mirror', line: 0 }, 'Mirrored top and bottom')}
              >
                Mirror top and bottom
              </Button>
            </div>
            <TurnAndSize arrange={arrange} />
            <GroundAngle pattern={pattern} arrange={arrange} />
            <Repeat pattern={pattern} arrange={arrange} />
            <JoinOther
              pattern={pattern}
              arrange={arrange}
              onTrouble={(line) => setOutcome({ kind: 'trouble', lines: [line] })}
            />
          </>
        )}
      </div>
    </details>
  );
}

import type { ReactNode } from 'react';
import type { RepeatChoice } from '#craft/size/repeats.ts';
import { readShare } from '#jobs/size/read.ts';
import type { Sizing } from '#jobs/size/size.ts';
import { LengthField } from '../../parts/LengthField.tsx';
import { SelectField } from '../../parts/SelectField.tsx';
import { WordsField } from '../../parts/WordsField.tsx';
import type { Aim, Asked } from './asked.ts';
import { WholeRepeats } from './WholeRepeats.tsx';

const AIMS: readonly { readonly value: Aim; readonly words: string }[] = [
  { value: 'none', words: 'as it is' },
  { value: 'percent', words: 'a percentage' },
  { value: 'spacing', words: 'a footside spacing' },
  { value: 'thread', words: 'to suit the chosen thread' },
  { value: 'length', words: 'whole repeats in a length' },
  { value: 'roller', words: 'whole repeats round a pillow' },
  { value: 'round', words: 'whole repeats round a round cloth' },
  { value: 'cloth', words: 'whole repeats on the sides of a cloth' },
];

/** Which size the pattern is to have, and what comes of it. */
export function AnotherSize({
  asked,
  sizing,
  choices,
  onAsk,
  children,
}: {
  readonly asked: Asked;
  /** The pattern as it is. */
  readonly sizing: Sizing;
  readonly choices: readonly RepeatChoice[];
  readonly onAsk: (more: Partial<Asked>) => void;
  readonly children: ReactNode;
}) {
  const { aim } = asked;
  const isFit = aim === 'length' || aim === 'roller' || aim === 'round' || aim === 'cloth';
  return (
    <section className="stack" aria-label="Another size">
      <h3>Another size</h3>
      <SelectField
        label="Make it"
        value={aim}
        choices={AIMS}
        onChange={(value) => onAsk({ aim: value as Aim, chosen: null })}
      />
      {aim === 'percent' && (
        <WordsField
          label="Percentage of its size"
          value={asked.factor === null ? '' : `${Number((asked.factor * 100).toFixed(2))} %`}
          help="71 % and 141 % are one step of the A sizes."
          refuse={(words) => (readShare(words) === null ? 'Type a percentage such as 71 %.' : null)}
          onChange={(words) => onAsk({ factor: readShare(words) })}
        />
      )}
      {aim === 'spacing' && (
        <LengthField
          label="From one footside pin to the next"
          value={asked.toSpacing ?? sizing.before.spacing}
          onChange={(toSpacing) => onAsk({ toSpacing })}
        />
      )}
      {isFit && (
        <WholeRepeats asked={asked} spacing={sizing.before.spacing} choices={choices} onAsk={onAsk} />
      )}
      {children}
    </section>
  );
}

import type { RepeatChoice } from '#craft/size/repeats.ts';
import { readCorners, readShare } from '#jobs/size/read.ts';
import { choiceInWords } from '#jobs/words/size.ts';
import { Choice } from '../../parts/Choice.tsx';
import { LengthField } from '../../parts/LengthField.tsx';
import { WordsField } from '../../parts/WordsField.tsx';
import type { Asked } from './asked.ts';

const MEASURES = {
  length: ['The length to fill', ''],
  roller: ['Once round the pillow', 'Over its cover. The thickness of the card is reckoned with.'],
  round: ['Straight across the round cloth', ''],
} as const;

const LEAST_CHANGE = 'least';

/** The place that takes whole repeats, and which number of them. */
export function WholeRepeats({
  asked,
  spacing,
  choices,
  onAsk,
}: {
  readonly asked: Asked;
  readonly spacing: number | null;
  readonly choices: readonly RepeatChoice[];
  readonly onAsk: (more: Partial<Asked>) => void;
}) {
  const { aim, corners, limit, chosen } = asked;
  const nameOf = ({ way, counts }: RepeatChoice) => `${counts[0]} ${way}`;
  const simple = aim === 'length' || aim === 'roller' || aim === 'round' ? MEASURES[aim] : null;
  return (
    <>
      {simple ? (
        <LengthField
          label={simple[0]}
          value={asked.place}
          {...(simple[1] && { help: simple[1] })}
          onChange={(place) => onAsk({ place, chosen: null })}
        />
      ) : (
        <div className="pair">
          <LengthField
            label="One side of the cloth"
            value={asked.width}
            onChange={(width) => onAsk({ width, chosen: null })}
          />
          <LengthField
            label="The other side"
            value={asked.height ?? asked.width}
            onChange={(height) => onAsk({ height, chosen: null })}
          />
        </div>
      )}
      {(aim === 'cloth' || aim === 'length') && (
        <WordsField
          label="What both corners of a side take of it"
          value={
            'mm' in corners ? (corners.mm === 0 ? '' : `${corners.mm} mm`) : `${corners.repeats} repeats`
          }
          help="Such as 40 mm or 2 repeats; empty where there are no corners."
          refuse={(words) =>
            words === '' || readCorners(words) ? null : 'Type a length or repeats: 40 mm, 2 repeats.'
          }
          onChange={(words) => onAsk({ corners: readCorners(words) ?? { mm: 0 }, chosen: null })}
        />
      )}
      <WordsField
        label="The most that may change"
        value={`${Number((limit * 100).toFixed(1))} %`}
        refuse={(words) => (readShare(words) === null ? 'Type a percentage such as 5 %.' : null)}
        onChange={(words) => onAsk({ limit: readShare(words) ?? limit })}
      />
      {choices.length > 0 && (
        <Choice
          label="Repeats"
          value={chosen ? `${chosen.repeats} ${chosen.way}` : LEAST_CHANGE}
          onChange={(name) => {
            const one = choices.find((choice) => nameOf(choice) === name);
            onAsk({ chosen: one ? { repeats: one.counts[0]!, way: one.way } : null });
          }}
          choices={[
            { value: LEAST_CHANGE, words: 'the number that changes least' },
            ...choices.map((choice) => ({ value: nameOf(choice), words: choiceInWords(choice, spacing) })),
          ]}
        />
      )}
    </>
  );
}

import { type LaceKind, usualWraps } from '#craft/size/grid.ts';
import { readNumber } from '#jobs/size/read.ts';
import { laceInWords } from '#jobs/words/size.ts';
import { Fold } from '../../parts/Fold.tsx';
import { LengthField } from '../../parts/LengthField.tsx';
import { SelectField } from '../../parts/SelectField.tsx';
import { WordsField } from '../../parts/WordsField.tsx';
import type { Asked } from './asked.ts';

/** The kind of lace, and measures that the pattern does not tell or tells wrongly. */
export function Untold({
  asked,
  onAsk,
}: {
  readonly asked: Asked;
  readonly onAsk: (more: Partial<Asked>) => void;
}) {
  const wrong = 'Type a number more than nought, such as 12.';
  const wrapsOf = (words: string) => (words === '' ? null : readNumber(words));
  return (
    <Fold label="What the pattern does not tell">
      <SelectField
        label="Kind of lace"
        value={asked.lace}
        choices={Object.keys(usualWraps).map((lace) => ({
          value: lace,
          words: laceInWords[lace as LaceKind],
        }))}
        onChange={(lace) => onAsk({ lace: lace as LaceKind })}
      />
      <WordsField
        label="Wraps of thread between two footside pins"
        value={asked.gap === null ? '' : String(asked.gap)}
        help={`Left empty it is ${usualWraps[asked.lace]} (common practice, from memory).`}
        refuse={(words) => (words === '' || (wrapsOf(words) ?? 0) > 0 ? null : wrong)}
        onChange={(words) => onAsk({ gap: wrapsOf(words) })}
      />
      <LengthField
        label="From one footside pin to the next"
        value={asked.spacing}
        help="Measure over ten, and divide."
        onChange={(spacing) => onAsk({ spacing })}
      />
      <LengthField
        label="Length of a repeat"
        value={asked.repeat}
        help="Along the footside, from a pin to the same pin of the next repeat."
        onChange={(repeat) => onAsk({ repeat })}
      />
      <LengthField
        label="Your pins, as thick as you measured them"
        value={asked.pin}
        onChange={(pin) => onAsk({ pin })}
      />
    </Fold>
  );
}

import { Choice } from '../../../parts/Choice.tsx';
import { Fold } from '../../../parts/Fold.tsx';
import { LengthField } from '../../../parts/LengthField.tsx';
import { WordsField } from '../../../parts/WordsField.tsx';
import type { PrintChoices } from './print-choices.ts';

/** The way of pricking first; what few people change is folded away. */
export function WayChoice({
  choices,
  onChange,
  hasPicture,
}: {
  readonly choices: PrintChoices;
  readonly onChange: (choices: PrintChoices) => void;
  /** Whether the pattern keeps the picture of its paper. */
  readonly hasPicture: boolean;
}) {
  const change = (part: Partial<PrintChoices>) => onChange({ ...choices, ...part });
  return (
    <>
      <Choice
        label="The way"
        value={choices.way}
        onChange={(way) => change({ way })}
        choices={[
          {
            value: 'through',
            words: 'through the paper',
            help: 'clean dots, and a guide to draw the markings from',
          },
          { value: 'film', words: 'under film', help: 'the complete sheet stays on the card, film over it' },
        ]}
      />
      {choices.way === 'film' && (
        <Choice
          label="The colour of your film"
          value={choices.film}
          onChange={(film) => change({ film })}
          choices={[
            { value: 'blue', words: 'blue' },
            { value: 'grey', words: 'grey' },
            { value: 'none', words: 'none: clear' },
          ]}
        />
      )}
      {hasPicture && (
        <Choice
          label="Markings"
          value={choices.markings}
          onChange={(markings) => change({ markings })}
          choices={[
            { value: 'drawn', words: 'drawn anew from the pattern' },
            {
              value: 'paper',
              words: 'as on your paper',
              help: 'its picture, gently bent so that it goes with the pins',
            },
          ]}
        />
      )}
      <Fold label="Hole marks, margins, overlap, some sheets only, a date">
        <Choice
          label="How holes are marked"
          value={choices.mark}
          onChange={(mark) => change({ mark })}
          choices={[
            { value: 'dot', words: 'dot' },
            { value: 'ring', words: 'ring' },
            { value: 'cross', words: 'cross' },
          ]}
        />
        <LengthField label="Size of the marks" value={choices.hole} onChange={(hole) => change({ hole })} />
        <LengthField
          label="White margin at every edge"
          value={choices.margin}
          onChange={(margin) => change({ margin })}
          help="5 to 20 mm"
        />
        <LengthField
          label="What neighbouring sheets share"
          value={choices.overlap}
          onChange={(overlap) => change({ overlap })}
          help="5 to 50 mm"
        />
        <WordsField
          label="Only these sheets"
          value={choices.only}
          onChange={(only) => change({ only })}
          help="such as A1, B2; all of them where nothing stands here"
        />
        <WordsField
          label="A date to print"
          value={choices.date}
          onChange={(date) => change({ date })}
          help="in your own words; none where nothing stands here"
        />
      </Fold>
    </>
  );
}

import { Button } from 'react-aria-components';
import type { Mark } from '#pattern/pattern.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Fold } from '../../parts/Fold.tsx';
import { WordsField } from '../../parts/WordsField.tsx';
import type { Marking } from './marking.ts';
import { refuseNumber } from './number.ts';
import { pointNames } from './points.ts';
import { SizeField } from './SizeField.tsx';
import { drawnNames } from './wishes.ts';

interface ChosenMarkProps {
  readonly marking: Marking;
  readonly mark: Mark;
  /** The point that the next touch puts elsewhere. */
  readonly moving: number | null;
}

/** The chosen marking: what can be changed about one of its kind, and removing it. */
export function ChosenMark({ marking, mark, moving }: ChosenMarkProps) {
  return (
    <section className="offer" aria-label="The chosen marking">
      <h3>Chosen: {drawnNames[mark.kind].toLowerCase()}</h3>
      <Figures mark={mark} onChange={(changed, words) => marking.change('marks', changed, words)} />
      <Points marking={marking} mark={mark} moving={moving} />
      {moving !== null && <p>Touch the pin or the place where it goes.</p>}
      <Button className="button danger" onPress={() => marking.remove({ list: 'marks', id: mark.id })}>
        Remove this marking
      </Button>
    </section>
  );
}

/** More points than this are out of the way until they are asked for. */
const FEW = 2;

/** A button for each point of a marking, after which a touch says where it goes; on the sheet it can be dragged too. */
function Points({ marking, mark, moving }: ChosenMarkProps) {
  const names = pointNames(mark);
  const wordsFor = (name: string) => (name === 'it' ? 'Put it elsewhere' : `Move ${name}`);
  const buttons = names.map((name, point) => (
    <Button key={name} className="button" onPress={() => marking.move(moving === point ? null : point)}>
      {moving === point ? 'Leave it where it is' : wordsFor(name)}
    </Button>
  ));
  if (names.length <= FEW) return <div className="buttons">{buttons}</div>;
  return (
    <Fold label="Move one of its points">
      <div className="buttons">{buttons}</div>
    </Fold>
  );
}

function Figures({
  mark,
  onChange,
}: {
  readonly mark: Mark;
  readonly onChange: (mark: Mark, words: string) => void;
}) {
  switch (mark.kind) {
    case 'line':
    case 'plait':
      return null;
    case 'gimp':
      return (
        <>
          <SizeField
            label="Its thickness"
            value={mark.width ?? null}
            onChange={(width) => onChange({ ...mark, width }, 'Changed the thickness of a gimp')}
          />
          <Choice
            label="Its ends"
            value={mark.closed ? 'joined' : 'open'}
            onChange={(ends) =>
              onChange({ ...mark, closed: ends === 'joined' }, 'Changed the ends of a gimp')
            }
            choices={[
              { value: 'open', words: 'are open' },
              { value: 'joined', words: 'are joined to a ring' },
            ]}
          />
        </>
      );
    case 'picot':
      return (
        <Choice
          label="Its loop lies"
          value={mark.side ?? 'left'}
          onChange={(side) => onChange({ ...mark, side }, 'Turned a picot')}
          choices={[
            { value: 'left', words: 'left of the pin' },
            { value: 'right', words: 'right of the pin' },
          ]}
        />
      );
    case 'arrow':
      return (
        <>
          <WordsField
            label="Words at its tail"
            help="such as 2 pairs; may stay empty"
            value={mark.label ?? ''}
            onChange={(label) => onChange(labelled(mark, label), 'Changed the words of an arrow')}
          />
          <Button
            className="button"
            onPress={() => onChange({ ...mark, from: mark.to, to: mark.from }, 'Turned an arrow round')}
          >
            Turn it round
          </Button>
        </>
      );
    case 'number':
      return (
        <WordsField
          label="The number"
          value={`${mark.value}`}
          numeric
          refuse={refuseNumber}
          onChange={(typed) => onChange({ ...mark, value: Number(typed) }, 'Changed a number')}
        />
      );
    case 'text':
      return (
        <>
          <WordsField
            label="The words"
            value={mark.text}
            refuse={(words) => (words ? null : 'Type some words, or remove the marking.')}
            onChange={(text) => onChange({ ...mark, text }, 'Changed words')}
          />
          <SizeField
            label="Height of the letters"
            value={mark.height}
            onChange={(height) => onChange({ ...mark, height }, 'Changed the height of words')}
          />
        </>
      );
  }
}

type Arrow = Extract<Mark, { kind: 'arrow' }>;

const labelled = ({ label: _label, ...arrow }: Arrow, label: string): Arrow =>
  label ? { ...arrow, label } : arrow;

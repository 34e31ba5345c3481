import { useId } from 'react';
import { Button } from 'react-aria-components';
import { takesInWords } from '#jobs/words/draft.ts';
import type { Figure, Takes } from '#pattern/recipe/walk.ts';
import { LengthField } from '../../parts/LengthField.tsx';
import { SelectField } from '../../parts/SelectField.tsx';
import { Switch } from '../../parts/Switch.tsx';
import { usePreferences } from '../../settings/preferences.ts';
import { meansIn } from './means-in.ts';
import { NumberField } from './NumberField.tsx';
import { stepOf } from './step-of.ts';

export interface FigureFieldProps {
  readonly figure: Figure;
  readonly label: string;
  readonly isTroubled: boolean;
  readonly onSet: (text: string) => void;
}

/** One figure of a recipe: what it is, what it can be, what it means, and buttons that step it. */
export function FigureField({ figure, label, isTroubled, onSet }: FigureFieldProps) {
  const { takes, means, value } = figure;
  const { shown, unit } = usePreferences();
  const id = useId();
  const step = stepOf(figure);
  return (
    <div className="figure" data-troubled={isTroubled || undefined}>
      <div className="figure-row">
        <Value {...{ figure, label, onSet }} />
        {step !== null && (
          <div className="figure-steps" data-steps>
            <StepButton sign="−" words={`${label}: less`} to={step.less} onSet={onSet} />
            <StepButton sign="+" words={`${label}: more`} to={step.more} onSet={onSet} />
          </div>
        )}
      </div>
      <small id={id}>
        {meansIn(unit, means)}
        {typeof value === 'number' && ` From ${bounds(takes, shown)}.`}
      </small>
    </div>
  );
}

/** 'a whole number from 1 to 200', and lengths in the unit that the person reads. */
const bounds = (takes: Takes, shown: (mm: number) => string): string =>
  (takes.kind === 'length' ? `${shown(takes.least)} to ${shown(takes.most)}` : takesInWords(takes)).replace(
    /^.* from /,
    '',
  );

function StepButton({
  sign,
  words,
  to,
  onSet,
}: {
  readonly sign: string;
  readonly words: string;
  readonly to: number | null;
  readonly onSet: (text: string) => void;
}) {
  return (
    <Button
      className="button"
      aria-label={words}
      isDisabled={to === null}
      onPress={() => to !== null && onSet(String(to))}
    >
      {sign}
    </Button>
  );
}

function Value({ figure, label, onSet }: Pick<FigureFieldProps, 'figure' | 'label' | 'onSet'>) {
  const { takes, value } = figure;
  switch (takes.kind) {
    case 'length':
      return (
        <LengthField
          label={label}
          value={Number(value)}
          any={takes.least <= 0}
          onChange={(mm) => onSet(`${mm} mm`)}
          onTyping={(mm) => onSet(`${mm} mm`)}
        />
      );
    case 'count':
    case 'number':
      return <NumberField label={label} value={Number(value)} onText={onSet} />;
    case 'word':
      return (
        <SelectField
          label={label}
          value={String(value)}
          choices={takes.words.map((word) => ({ value: word, words: word }))}
          onChange={onSet}
        />
      );
    case 'yes-or-no':
      return (
        <Switch words={label} label={label} on={value === true} onChange={(on) => onSet(on ? 'yes' : 'no')} />
      );
    case 'text':
      return (
        <label className="colour">
          <input type="color" value={String(value)} onChange={({ target }) => onSet(target.value)} />
          {label}
        </label>
      );
  }
}

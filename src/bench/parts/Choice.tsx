import { Label, Radio, RadioGroup } from 'react-aria-components';

export interface ChoiceProps<Value extends string> {
  readonly label: string;
  /** Null where nothing is chosen yet. Any other value that is no choice would shut the keyboard out. */
  readonly value: Value | null;
  readonly choices: readonly { readonly value: Value; readonly words: string; readonly help?: string }[];
  readonly onChange: (value: Value) => void;
}

/** One of a few. */
export function Choice<Value extends string>({ label, value, choices, onChange }: ChoiceProps<Value>) {
  return (
    <RadioGroup className="choice" value={value} onChange={(chosen) => onChange(chosen as Value)}>
      <Label>{label}</Label>
      {choices.map(({ value: one, words, help }) => (
        <Radio key={one} value={one} className="choice-one">
          <span>
            {words}
            {help && <small>{help}</small>}
          </span>
        </Radio>
      ))}
    </RadioGroup>
  );
}

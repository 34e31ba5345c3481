import { useState } from 'react';
import { Input, Label, Text, TextField } from 'react-aria-components';
import { Refusal } from './Refusal.tsx';

export interface WordsFieldProps {
  readonly label: string;
  readonly value: string;
  /** Told when the field is left or Enter is pressed, and only of what is not refused. */
  readonly onChange: (words: string) => void;
  readonly help?: string;
  /** Why these words cannot be taken, or null. */
  readonly refuse?: (words: string) => string | null;
  readonly numeric?: boolean;
  readonly autoFocus?: boolean;
}

/** No name or label in a pattern is longer. */
const MOST = 1000;

/** A line of words, taken when it is whole rather than letter by letter, so that it is one step to undo. */
export function WordsField({ label, value, onChange, help, refuse, numeric, autoFocus }: WordsFieldProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const words = typed === null ? value : typed.trim();
  const refused = typed === null ? null : (refuse?.(words) ?? null);
  const take = () => {
    if (typed === null || refused) return;
    setTyped(null);
    if (words !== value) onChange(words);
  };
  return (
    <TextField
      className="field"
      value={typed ?? value}
      onChange={setTyped}
      onBlur={take}
      onKeyDown={({ key }) => key === 'Enter' && take()}
      isInvalid={refused !== null}
      autoFocus={autoFocus ?? false}
    >
      <Label>{label}</Label>
      <Input maxLength={MOST} autoComplete="off" inputMode={numeric ? 'numeric' : 'text'} />
      {help && <Text slot="description">{help}</Text>}
      <Refusal words={refused} />
    </TextField>
  );
}

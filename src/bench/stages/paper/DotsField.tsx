import { useState } from 'react';
import { FieldError, Input, Label, Text, TextField } from 'react-aria-components';
import { numberInWords } from '#jobs/words/number.ts';

/** A number of dots, typed with either decimal mark; null where none is given yet. */
export function DotsField({
  label,
  value,
  onChange,
  help,
}: {
  readonly label: string;
  readonly value: number | null;
  readonly onChange: (dots: number) => void;
  readonly help?: string;
}) {
  const [typed, setTyped] = useState<string | null>(null);
  const number = typed === null ? null : read(typed);
  const trouble =
    typed?.trim() && number === null ? 'This is no number of dots. Type one such as 1250.' : null;
  const take = () => {
    if (number === null) return;
    setTyped(null);
    if (number !== value) onChange(number);
  };
  return (
    <TextField
      className="field"
      value={typed ?? (value === null ? '' : numberInWords(value, 1))}
      onChange={setTyped}
      onBlur={take}
      onKeyDown={({ key }) => key === 'Enter' && take()}
      isInvalid={trouble !== null}
    >
      <Label>{label}</Label>
      <Input inputMode="decimal" autoComplete="off" />
      {help && <Text slot="description">{help}</Text>}
      <FieldError>{trouble}</FieldError>
    </TextField>
  );
}

const read = (text: string): number | null =>
  /^\s*-?\d+([.,]\d+)?\s*$/.test(text) ? Number.parseFloat(text.replace(',', '.')) : null;

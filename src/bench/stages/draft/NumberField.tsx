import { useState } from 'react';
import { Input, Label, TextField } from 'react-aria-components';
import { usePreferences } from '../../settings/preferences.ts';

/** A number as people type it, with either decimal mark. What it may be is the recipe's business. */
export function NumberField({
  label,
  value,
  onText,
  keeps = false,
}: {
  readonly label: string;
  readonly value: number;
  /** Told of what is typed, at every key. */
  readonly onText: (text: string) => void;
  /** Whether what was typed stays when the field is left; else `value` is shown again. */
  readonly keeps?: boolean;
}) {
  const { decimal } = usePreferences();
  const [typed, setTyped] = useState<string | null>(null);
  return (
    <TextField
      className="field"
      value={typed ?? String(value).replace('.', decimal)}
      onChange={(text) => {
        setTyped(text);
        if (keeps || text.trim() !== '') onText(text);
      }}
      onBlur={() => !keeps && setTyped(null)}
    >
      <Label>{label}</Label>
      <Input inputMode="decimal" autoComplete="off" />
    </TextField>
  );
}

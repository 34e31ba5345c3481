import { useId, useState } from 'react';
import { FieldError, Input, Label, Text, TextField } from 'react-aria-components';
import { formatBoth } from '#base/units/format-length.ts';
import { parseLength } from '#base/units/parse-length.ts';
import { lengthTroubleInWords } from '#jobs/words/length.ts';
import { usePreferences } from '../settings/preferences.ts';

export interface LengthFieldProps {
  readonly label: string;
  /** Millimetres; null where nothing is given yet. */
  readonly value: number | null;
  readonly onChange: (mm: number) => void;
  readonly help?: string;
}

/**
 * A length as people type it: either decimal mark, fractions, mm, cm or inches. Beside it stands how it was understood,
 * since a misread mark would make it ten times too long.
 */
export function LengthField({ label, value, onChange, help }: LengthFieldProps) {
  const { unit, shown } = usePreferences();
  const [typed, setTyped] = useState<string | null>(null);
  const id = useId();
  const read = typed === null ? null : parseLength(typed, unit);
  const trouble = read && !read.ok && typed?.trim() ? lengthTroubleInWords(read.trouble) : null;
  return (
    <TextField
      className="field"
      value={typed ?? (value === null ? '' : shown(value))}
      onChange={(text) => {
        setTyped(text);
        const length = parseLength(text, unit);
        if (length.ok && length.value > 0) onChange(length.value);
      }}
      onBlur={() => read?.ok && setTyped(null)}
      isInvalid={trouble !== null}
    >
      <Label>{label}</Label>
      <Input inputMode="decimal" autoComplete="off" aria-describedby={id} />
      <Text slot="description">{help}</Text>
      <span id={id} className="understood">
        {value === null ? '' : formatBoth(value)}
      </span>
      <FieldError>{trouble}</FieldError>
    </TextField>
  );
}

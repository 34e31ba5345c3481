import { useId, useState } from 'react';
import { Input, Label, Text, TextField } from 'react-aria-components';
import { formatBoth } from '#base/units/format-length.ts';
import { parseLength } from '#base/units/parse-length.ts';
import { lengthTroubleInWords } from '#jobs/words/length.ts';
import { usePreferences } from '../settings/preferences.ts';
import { Refusal } from './Refusal.tsx';

export interface LengthFieldProps {
  readonly label: string;
  /** Millimetres; null where nothing is given yet. */
  readonly value: number | null;
  readonly onChange: (mm: number) => void;
  /** Told of every length on the way, while it is being typed. */
  readonly onTyping?: (mm: number) => void;
  /** Told when the field is emptied, where nothing is a good answer too. */
  readonly onClear?: () => void;
  readonly help?: string;
  /** Whether it may be nought or less, as a place may. */
  readonly any?: boolean;
}

/**
 * A length as people type it: either decimal mark, fractions, mm, cm or inches. Beside it stands how it was understood,
 * since a misread mark would make it ten times too long.
 */
export function LengthField({
  label,
  value,
  onChange,
  onTyping,
  onClear,
  help,
  any = false,
}: LengthFieldProps) {
  const { unit, shown } = usePreferences();
  const [typed, setTyped] = useState<string | null>(null);
  const id = useId();
  const read = typed === null ? null : parseLength(typed, unit);
  const type = (text: string) => {
    setTyped(text);
    const length = parseLength(text, unit);
    if (length.ok && (any || length.value > 0)) onTyping?.(length.value);
  };
  const trouble = read && !read.ok && typed?.trim() ? lengthTroubleInWords(read.trouble) : null;
  const refused = read?.ok && !any && read.value <= 0 ? 'This must be more than nought.' : null;
  const take = () => {
    if (onClear && typed?.trim() === '') {
      setTyped(null);
      if (value !== null) onClear();
      return;
    }
    if (!read?.ok || refused) return;
    setTyped(null);
    if (read.value !== value) onChange(read.value);
  };
  const understood = read?.ok ? read.value : typed?.trim() === '' && onClear ? null : value;
  return (
    <TextField
      className="field"
      value={typed ?? (value === null ? '' : shown(value))}
      onChange={type}
      onBlur={take}
      onKeyDown={({ key }) => key === 'Enter' && take()}
      isInvalid={trouble !== null || refused !== null}
    >
      <Label>{label}</Label>
      <Input inputMode="decimal" autoComplete="off" aria-describedby={id} />
      {help && <Text slot="description">{help}</Text>}
      <span id={id} className="understood">
        {understood === null ? '' : formatBoth(understood)}
      </span>
      <Refusal words={trouble ?? refused} />
    </TextField>
  );
}

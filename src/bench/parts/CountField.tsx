import { useState } from 'react';
import { Button, Group, Input, Label, TextField } from 'react-aria-components';

/** A whole number, typed or stepped. */
export function CountField({
  label,
  value,
  least,
  most,
  onChange,
}: {
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly onChange: (value: number) => void;
}) {
  const [typed, setTyped] = useState<string | null>(null);
  const take = (next: number) => {
    setTyped(null);
    onChange(Math.min(most, Math.max(least, Math.round(next))));
  };
  return (
    <TextField
      className="field"
      value={typed ?? String(value)}
      onChange={setTyped}
      onBlur={() => typed !== null && (/^\d+$/.test(typed.trim()) ? take(Number(typed)) : setTyped(null))}
    >
      <Label>{label}</Label>
      <Group className="steps">
        <Button
          className="button"
          aria-label={`Less: ${label}`}
          isDisabled={value <= least}
          onPress={() => take(value - 1)}
        >
          −
        </Button>
        <Input inputMode="numeric" autoComplete="off" />
        <Button
          className="button"
          aria-label={`More: ${label}`}
          isDisabled={value >= most}
          onPress={() => take(value + 1)}
        >
          +
        </Button>
      </Group>
    </TextField>
  );
}

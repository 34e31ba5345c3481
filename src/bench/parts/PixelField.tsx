import { useId, useState } from 'react';
import { FieldError, Input, Label, TextField } from 'react-aria-components';
import { usePlaces } from './use-places.ts';

export interface PixelFieldProps {
  readonly label: string;
  readonly value: number | null;
  readonly onChange: (pixels: number) => void;
  /** Whether it must be more than nought, as a size must. */
  readonly isSize?: boolean;
}

/** A place or size in pixels, for patterns of which nobody knows yet how large they are. */
export function PixelField({ label, value, onChange, isSize = false }: PixelFieldProps) {
  const shown = usePlaces('px');
  const [typed, setTyped] = useState<string | null>(null);
  const id = useId();
  const read = typed === null ? null : parsePixels(typed);
  const isTooSmall = isSize && read !== null && read <= 0;
  const take = () => {
    if (read === null || isTooSmall) return;
    setTyped(null);
    if (read !== value) onChange(read);
  };
  return (
    <TextField
      className="field"
      value={typed ?? (value === null ? '' : shown(value))}
      onChange={setTyped}
      onBlur={take}
      onKeyDown={({ key }) => key === 'Enter' && take()}
      isInvalid={typed !== null && typed.trim() !== '' && (read === null || isTooSmall)}
    >
      <Label>{label}</Label>
      <Input inputMode="decimal" autoComplete="off" aria-describedby={id} />
      <span id={id} className="understood">
        pixels of the picture
      </span>
      <FieldError>
        {isTooSmall
          ? 'This must be more than nought.'
          : 'Type a number of pixels, such as 120 or 120.5. Lengths need the scale of the picture.'}
      </FieldError>
    </TextField>
  );
}

/** A number of pixels as people type it, with either decimal mark; null for anything else. */
function parsePixels(text: string): number | null {
  const typed = text.trim().replace('\u2212', '-').replace(',', '.');
  const [, figures] = /^(-?(?:\d{1,6}(?:\.\d*)?|\.\d+))\s*(?:px)?$/i.exec(typed) ?? [];
  return figures === undefined ? null : Number(figures);
}

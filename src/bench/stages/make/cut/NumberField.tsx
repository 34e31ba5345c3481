import { WordsField } from '../../../parts/WordsField.tsx';

/** A number above nought, or nothing. */
export function NumberField({
  label,
  value,
  onChange,
  help,
  whole = false,
}: {
  readonly label: string;
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
  readonly help?: string;
  readonly whole?: boolean;
}) {
  const numberIn = (words: string): number =>
    (whole ? /^\d+$/ : /^\d+([.,]\d+)?$/).test(words) ? Number(words.replace(',', '.')) : Number.NaN;
  const refuse = (words: string): string | null => {
    const number = numberIn(words);
    if (words === '' || (number > 0 && number <= MOST)) return null;
    return whole
      ? 'This must be a whole number above nought, such as 4.'
      : 'This must be a number above nought, such as 300.';
  };
  return (
    <WordsField
      label={label}
      value={value === null ? '' : String(value)}
      onChange={(words) => onChange(words === '' ? null : numberIn(words))}
      refuse={refuse}
      numeric
      {...(help !== undefined && { help })}
    />
  );
}

/** No machine's feed, power or waiting time is larger. */
const MOST = 100_000;

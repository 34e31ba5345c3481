import { useId } from 'react';

/** One of several words. */
export function SelectField({
  label,
  value,
  choices,
  onChange,
}: {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly { readonly value: string; readonly words: string }[];
  readonly onChange: (value: string) => void;
}) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={({ target }) => onChange(target.value)}>
        {choices.map(({ value: one, words }) => (
          <option key={one} value={one}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}

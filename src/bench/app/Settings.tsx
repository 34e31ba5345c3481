import { Choice } from '../parts/Choice.tsx';
import { type Preferences, setPreferences, usePreferences } from '../settings/preferences.ts';
import { Keeping } from './Keeping.tsx';

const TEXT_SIZES = [
  { value: '1', words: 'usual' },
  { value: '1.25', words: 'large' },
  { value: '1.5', words: 'larger' },
  { value: '2', words: 'twice as large' },
] as const;

/** How a person likes the bench: units, decimal mark, look, size of text. Each holds at once. */
export function Settings() {
  const { unit, decimal, look, text, repeats } = usePreferences();
  return (
    <main className="page">
      <div className="row">
        <a className="button quiet" href="#/">
          Shelf
        </a>
        <h1>Settings</h1>
      </div>
      <Choice
        label="Lengths in"
        value={unit}
        onChange={(chosen) => setPreferences({ unit: chosen })}
        choices={[
          { value: 'mm', words: 'millimetres' },
          { value: 'in', words: 'inches' },
        ]}
      />
      <Choice
        label="Decimal mark"
        value={decimal}
        onChange={(chosen) => setPreferences({ decimal: chosen })}
        choices={[
          { value: '.', words: 'a point: 2.5', help: 'whichever is chosen, both are understood' },
          { value: ',', words: 'a comma: 2,5' },
        ]}
      />
      <Choice<Preferences['look']>
        label="Look"
        value={look}
        onChange={(chosen) => setPreferences({ look: chosen })}
        choices={[
          { value: 'system', words: 'as the device has it' },
          { value: 'light', words: 'light' },
          { value: 'dark', words: 'dark' },
        ]}
      />
      <Choice<string>
        label="Size of text"
        value={String(text)}
        onChange={(chosen) => setPreferences({ text: Number(chosen) })}
        choices={TEXT_SIZES}
      />
      <Choice
        label="Two taps on a button, one straight after the other"
        value={repeats}
        onChange={(chosen) => setPreferences({ repeats: chosen })}
        choices={[
          {
            value: 'once',
            words: 'count as one',
            help: 'for a hand that trembles; the sheet, Undo and small steps take every tap',
          },
          { value: 'each', words: 'count as two' },
        ]}
      />
      <Keeping />
    </main>
  );
}

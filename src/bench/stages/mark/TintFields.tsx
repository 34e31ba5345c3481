import { useId } from 'react';
import { stitchNames, stitchTints, wantedTint } from '#paper/ink/tints.ts';
import type { Stitch } from '#pattern/pattern.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Switch } from '../../parts/Switch.tsx';
import { WordsField } from '../../parts/WordsField.tsx';
import { Hatched } from './Hatched.tsx';
import type { Tint } from './tint.ts';

const STITCHES = Object.entries(stitchNames).map(([value, words]) => ({ value: value as Stitch, words }));

/** A tint where the stitch has none of its own. */
const PLAIN = '#e3e3e3';

/** How an area is worked, and what it looks like. */
export function TintFields({
  tint,
  onChange,
}: {
  readonly tint: Tint;
  readonly onChange: (tint: Tint, words: string) => void;
}) {
  const id = useId();
  const colour = wantedTint({ id: '', outline: [], ...tint });
  const usual = tint.stitch && stitchTints[tint.stitch];
  const { tint: own, name: _name, ...bare } = tint;
  const { tint: _own, ...plain } = tint;
  return (
    <>
      <div className="wishes">
        <Choice
          label="Worked in"
          value={tint.stitch ?? 'other'}
          onChange={(stitch) => onChange({ ...tint, stitch }, 'Changed the stitch of an area')}
          choices={STITCHES}
        />
      </div>
      <Hatched stitch={tint.stitch} colour={colour} />
      <Switch
        words="A colour of my own"
        label="Tint it in a colour of my own"
        on={own !== undefined}
        onChange={(on) =>
          onChange(on ? { ...tint, tint: usual ?? PLAIN } : plain, 'Changed the tint of an area')
        }
      />
      {own !== undefined && (
        <div className="field">
          <label htmlFor={id}>Its colour</label>
          <input
            id={id}
            type="color"
            // Taken when it is whole: a browser tells of every shade that is passed on the way.
            key={own}
            defaultValue={own}
            onBlur={({ target }) => {
              if (target.value !== own)
                onChange({ ...tint, tint: target.value }, 'Changed the tint of an area');
            }}
          />
        </div>
      )}
      <WordsField
        label="Your own word for it"
        help="is printed inside of it; may stay empty"
        value={tint.name ?? ''}
        onChange={(name) =>
          onChange(
            name ? { ...tint, name } : { ...bare, ...(own !== undefined && { tint: own }) },
            'Changed the words of an area',
          )
        }
      />
    </>
  );
}

import { Choice } from '../../../parts/Choice.tsx';
import { Fold } from '../../../parts/Fold.tsx';
import { LengthField } from '../../../parts/LengthField.tsx';
import { Switch } from '../../../parts/Switch.tsx';
import { cutLabels } from './cut-choices.ts';
import type { CutChoiceProps } from './FileChoice.tsx';

/** How large the holes are, in which order they are made, and the bed that they are made on. */
export function HolesAndBed({ choices, change }: CutChoiceProps) {
  return (
    <>
      <Fold label="The holes and the card">
        <LengthField
          label={cutLabels.hole}
          value={choices.hole}
          onChange={(hole) => change({ hole })}
          onClear={() => change({ hole: null })}
          help="a little finer than the pin where nothing stands here"
        />
        <LengthField
          label="The pin that will stand in it"
          value={choices.pin}
          onChange={(pin) => change({ pin })}
          onClear={() => change({ pin: null })}
          help="the pattern’s own where nothing stands here"
        />
        <LengthField
          label="The card’s thickness"
          value={choices.cardThickness}
          onChange={(cardThickness) => change({ cardThickness })}
          onClear={() => change({ cardThickness: null })}
          help="the pattern’s own, or 0.4 mm, where nothing stands here"
        />
      </Fold>
      <Fold label="The bed and the way from hole to hole">
        <p>{cutLabels.bed}</p>
        <div className="pair">
          <LengthField
            label="Bed across"
            value={choices.bedWidth}
            onChange={(bedWidth) => change({ bedWidth })}
            onClear={() => change({ bedWidth: null })}
          />
          <LengthField
            label="Bed down"
            value={choices.bedHeight}
            onChange={(bedHeight) => change({ bedHeight })}
            onClear={() => change({ bedHeight: null })}
          />
        </div>
        {!choices.printFirst && (
          <Switch
            words={cutLabels.split}
            label={cutLabels.split}
            on={choices.split}
            onChange={(split) => change({ split })}
          />
        )}
        <Choice
          label="The way from hole to hole"
          value={choices.order}
          onChange={(order) => change({ order })}
          choices={[
            { value: 'preset', words: 'as usual', help: 'as the preset has it, else as short as can be' },
            { value: 'shortest', words: 'as short as can be' },
            { value: 'spread', words: 'far apart, so that the heat spreads' },
          ]}
        />
        {choices.order === 'spread' && (
          <LengthField
            label="At least so far to the next hole"
            value={choices.spread}
            onChange={(spread) => change({ spread })}
          />
        )}
      </Fold>
    </>
  );
}

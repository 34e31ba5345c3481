import { Choice } from '../../../parts/Choice.tsx';
import { LengthField } from '../../../parts/LengthField.tsx';
import { Switch } from '../../../parts/Switch.tsx';
import { type CutChoices, cutLabels } from './cut-choices.ts';
import { NumberField } from './NumberField.tsx';

export interface CutChoiceProps {
  readonly choices: CutChoices;
  readonly change: (part: Partial<CutChoices>) => void;
}

/** What everybody is asked: the kind of file, the kerf, and whether the card is cut out. */
export function FileChoice({ choices, change }: CutChoiceProps) {
  return (
    <>
      <Choice
        label="The kind of file"
        value={choices.format}
        onChange={(format) => change({ format })}
        choices={[
          { value: 'dxf', words: 'DXF', help: 'most lasers, drills and shops' },
          { value: 'svg', words: 'SVG', help: 'lasers and plotters that take drawings' },
          { value: 'gcode', words: 'G-code', help: 'machines that take the moves themselves' },
        ]}
      />
      <Choice
        label="Does your shop compensate for the kerf, the strip that the beam takes away?"
        value={choices.shop}
        onChange={(shop) => change({ shop })}
        choices={[
          { value: 'unknown', words: 'I do not know yet', help: 'the file holds the holes as they shall be' },
          { value: 'compensates', words: 'yes, it does' },
          { value: 'does-not', words: 'no, it does not', help: 'holes are drawn that much smaller' },
        ]}
      />
      {choices.shop === 'does-not' && (
        <LengthField
          label={cutLabels.kerf}
          value={choices.kerf}
          onChange={(kerf) => change({ kerf })}
          onClear={() => change({ kerf: null })}
          help="ask how wide it is in card, such as 0.15 mm"
        />
      )}
      <Switch
        words={cutLabels.card}
        label={cutLabels.card}
        on={choices.cutCard}
        onChange={(cutCard) => change({ cutCard })}
      />
      {choices.cutCard && (
        <>
          <LengthField
            label="Card left round the holes"
            value={choices.cardMargin}
            onChange={(cardMargin) => change({ cardMargin })}
          />
          <NumberField
            label="Tabs that hold the card"
            value={choices.tabs}
            onChange={(tabs) => change({ tabs })}
            help="how many short bridges, such as 4; none where nothing stands here"
            whole
          />
          {choices.tabs !== null && (
            <LengthField
              label="Width of a tab"
              value={choices.tabWidth}
              onChange={(tabWidth) => change({ tabWidth })}
            />
          )}
        </>
      )}
    </>
  );
}

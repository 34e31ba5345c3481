import { Choice } from '../../../parts/Choice.tsx';
import { Fold } from '../../../parts/Fold.tsx';
import { LengthField } from '../../../parts/LengthField.tsx';
import { Switch } from '../../../parts/Switch.tsx';
import { type CutChoices, cutLabels } from './cut-choices.ts';
import type { CutChoiceProps } from './FileChoice.tsx';
import { NumberField } from './NumberField.tsx';
import { PresetChoice } from './PresetChoice.tsx';

const AS_USUAL = {
  value: 'preset',
  words: 'as usual',
  help: 'as the preset has it, where there is one',
} as const;

/** What one machine or shop wants: a preset, and the few things that each kind of file has for itself. */
export function ForMachine({ choices, change }: CutChoiceProps) {
  return (
    <Fold label="What your machine or shop wants">
      <PresetChoice preset={choices.preset} onChange={(preset) => change({ preset })} />
      {choices.format === 'gcode' ? (
        <GcodeChoices choices={choices} change={change} />
      ) : (
        <DrawnChoices choices={choices} change={change} />
      )}
    </Fold>
  );
}

function DrawnChoices({ choices, change }: CutChoiceProps) {
  return (
    <>
      <Choice<CutChoices['holes']>
        label="How holes are drawn"
        value={choices.holes}
        onChange={(holes) => change({ holes })}
        choices={[
          AS_USUAL,
          { value: 'circle', words: 'circles' },
          { value: 'polyline', words: 'closed polygons', help: 'within 0.01 mm of the circle' },
          ...(choices.format === 'svg' ? [{ value: 'arcs', words: 'paths of two arcs' } as const] : []),
        ]}
      />
      {choices.format === 'svg' ? (
        <LengthField
          label="Width of lines"
          value={choices.stroke}
          onChange={(stroke) => change({ stroke })}
          onClear={() => change({ stroke: null })}
          help="0.01 mm, or as the preset has it, where nothing stands here"
        />
      ) : (
        <>
          <Choice<CutChoices['release']>
            label="Release of DXF"
            value={choices.release}
            onChange={(release) => change({ release })}
            choices={[
              AS_USUAL,
              { value: 'R12', words: 'R12', help: 'which every machine’s program reads' },
              { value: 'R2000', words: 'R2000' },
            ]}
          />
          <Choice<CutChoices['unit']>
            label="Unit of the file"
            value={choices.unit}
            onChange={(unit) => change({ unit })}
            choices={[AS_USUAL, { value: 'mm', words: 'millimetres' }, { value: 'in', words: 'inches' }]}
          />
        </>
      )}
    </>
  );
}

function GcodeChoices({ choices, change }: CutChoiceProps) {
  return (
    <>
      <p>These come from your machine’s manual and a test coupon, and from nowhere else.</p>
      <NumberField label={cutLabels.feed} value={choices.feed} onChange={(feed) => change({ feed })} />
      <NumberField label={cutLabels.power} value={choices.power} onChange={(power) => change({ power })} />
      <NumberField
        label="Full power, S"
        value={choices.mostPower}
        onChange={(mostPower) => change({ mostPower })}
      />
      <Switch
        words="Straight lines only, no arcs"
        label="Straight lines only, no arcs"
        on={choices.straight}
        onChange={(straight) => change({ straight })}
      />
      <NumberField
        label="A standing beam for each hole, milliseconds"
        value={choices.pierce}
        onChange={(pierce) => change({ pierce })}
        help="advanced; holes are followed round where nothing stands here"
      />
    </>
  );
}

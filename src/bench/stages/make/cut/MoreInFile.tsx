import type { PaperSize } from '#base/units/paper.ts';
import { Choice } from '../../../parts/Choice.tsx';
import { Fold } from '../../../parts/Fold.tsx';
import { PaperChoice } from '../../../parts/PaperChoice.tsx';
import { Switch } from '../../../parts/Switch.tsx';
import { type CutChoices, cutLabels } from './cut-choices.ts';
import type { CutChoiceProps } from './FileChoice.tsx';

/** What else may be in the file, or beside it. */
export function MoreInFile({
  choices,
  change,
  paper,
  onPaper,
}: CutChoiceProps & { readonly paper: PaperSize | null; readonly onPaper: (paper: PaperSize) => void }) {
  const yesOrNo = (
    key: 'engrave' | 'ref' | 'film' | 'coupon' | 'mirror' | 'printFirst' | 'sized',
    words: string,
  ) => <Switch words={words} label={words} on={choices[key]} onChange={(on) => change({ [key]: on })} />;
  return (
    <Fold label="Engraving, targets, a coupon, and more">
      {yesOrNo('engrave', cutLabels.engrave)}
      {yesOrNo('ref', cutLabels.ref)}
      {yesOrNo('coupon', cutLabels.coupon)}
      {choices.coupon && (
        <p>Five rows of holes: the row in which pins sit as they should tells you the kerf.</p>
      )}
      {yesOrNo('film', 'The outline of the film as a second file')}
      {choices.film && <p>For a knife plotter. Never put PVC film into a laser.</p>}
      {!choices.printFirst && yesOrNo('mirror', 'Turned round, as seen from the back')}
      {yesOrNo('printFirst', 'A sheet to print first, with targets at the same places')}
      {choices.printFirst && <PaperChoice paper={paper} onChange={onPaper} />}
      <Choice<CutChoices['only']>
        label="What the file holds"
        value={choices.only}
        onChange={(only) => change({ only })}
        choices={[
          { value: 'all', words: 'everything that was asked for' },
          { value: 'HOLES', words: 'the holes only', help: 'in the same frame' },
          { value: 'OUTLINE', words: 'the card’s outline only' },
          { value: 'ENGRAVE', words: 'the engraving only' },
        ]}
      />
      {yesOrNo('sized', 'Unit and size in the name of each file')}
    </Fold>
  );
}

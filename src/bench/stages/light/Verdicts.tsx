import { useEffect, useMemo, useState } from 'react';
import { announce } from '../../parts/announce.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Message } from '../../parts/Message.tsx';
import { boxAround } from '../../sheet/camera.ts';
import { useSheet } from '../../sheet/handle.ts';
import type { PaperUnder } from '../../sheet/paper-under.ts';
import { useTool } from '../../sheet/use-tool.ts';
import { FaultList } from './FaultList.tsx';
import { FaultsTool } from './faults-tool.ts';
import { type KeptCheck, withMended } from './kept-check.ts';

/** How strongly the photo shows: paler than it is, so that signs stand out on it. */
const PALE = 0.6;
/** How much of the card is shown about a place, mm. */
const ABOUT = 8;

/** What the photo told: in sum, on the sheet, and as a list to mend by. */
export function Verdicts({
  check,
  photo,
  onChange,
}: {
  readonly check: KeptCheck;
  readonly photo: PaperUnder | null;
  readonly onChange: (check: KeptCheck) => void;
}) {
  const sheet = useSheet();
  const [under, setUnder] = useState<'photo' | 'pattern'>('photo');
  const [chosen, setChosen] = useState<number | null>(null);
  const { faults, summary, notes } = check;
  const tool = useMemo(() => new FaultsTool(setChosen), []);
  useTool(tool);
  useEffect(() => {
    tool.update({ faults, chosen });
    sheet.redraw();
  }, [tool, sheet, faults, chosen]);
  const shown = under === 'photo' ? photo : null;
  useEffect(() => {
    sheet.setDress(shown ? { photo: shown, paper: PALE, markings: false, pins: false } : {});
    return () => sheet.setDress({});
  }, [sheet, shown]);
  useEffect(() => {
    if (chosen !== null && faults[chosen]?.words) announce(faults[chosen].words);
  }, [chosen, faults]);
  const open = faults.filter(({ words, mended }) => words !== null && !mended).length;
  return (
    <>
      <Message kind={open === 0 ? 'good' : 'note'}>{summary}</Message>
      {notes.map((note) => (
        <Message key={note} kind="caution">
          {note}
        </Message>
      ))}
      {photo && (
        <Choice
          label="Under the verdicts lies"
          value={under}
          onChange={setUnder}
          choices={[
            { value: 'photo', words: 'the photo', help: 'laid flat, as the card is seen from the front' },
            { value: 'pattern', words: 'the pattern' },
          ]}
        />
      )}
      <FaultList
        faults={faults}
        chosen={chosen}
        onChoose={(fault) => {
          setChosen(fault);
          sheet.zoomTo(boxAround(faults[fault]!.at, ABOUT));
        }}
        onMended={(fault, mended) => onChange(withMended(check, fault, mended))}
      />
    </>
  );
}

import { useState } from 'react';
import type { PrinterProfile } from '#paper/calibrate/profile.ts';
import { Choice } from '../../../parts/Choice.tsx';
import { Message } from '../../../parts/Message.tsx';
import { PaperChoice } from '../../../parts/PaperChoice.tsx';
import { usePaper, usePrinters } from '../../../store/printers.ts';
import { Step } from '../Step.tsx';
import { KeptPrinters } from './KeptPrinters.tsx';
import { Readings } from './Readings.tsx';
import { SheetToMeasure } from './SheetToMeasure.tsx';

/** A printer that prints true: a sheet, what it measures, and a second sheet that proves it. */
export function MeasurePrinter() {
  const [paper, setPaper] = usePaper();
  const [use, setUse] = useState<PrinterProfile['use']>('print');
  const printers = usePrinters();
  if (paper === undefined) return null;
  return (
    <>
      <p>
        Most printers are out by a few tenths of a percent, and not alike in both directions. Measure yours
        once for each paper, and it is put right from then on.
      </p>
      <Step number={1} title="The sheet to measure">
        <PaperChoice paper={paper} onChange={setPaper} />
        <Choice
          label="What is to be measured"
          value={use}
          onChange={setUse}
          choices={[
            { value: 'print', words: 'a printer' },
            {
              value: 'photocopy',
              words: 'a photocopier',
              help: 'printing anew is better: every copy is a little off',
            },
          ]}
        />
        {paper ? (
          <SheetToMeasure paper={paper} use={use} printer={null} />
        ) : (
          <Message kind="note">Choose the paper first: it says how long the lines are.</Message>
        )}
      </Step>
      {paper && (
        <Step number={2} title="What you measured">
          <Readings key={use} paper={paper} use={use} onKeep={printers.keep} />
        </Step>
      )}
      <Step number={3} title="Printers that were measured">
        <KeptPrinters printers={printers} />
      </Step>
    </>
  );
}

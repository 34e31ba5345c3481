import { useState } from 'react';
import { Choice } from '../../parts/Choice.tsx';
import { MeasurePrinter } from './calibrate/MeasurePrinter.tsx';
import { CutFiles } from './cut/CutFiles.tsx';
import { PrintSheets } from './print/PrintSheets.tsx';
import './make.css';

type Made = 'sheets' | 'files' | 'printer';

/** Make: sheets to prick by, files for machines, and a printer that prints true. */
export function Panel() {
  const [made, setMade] = useState<Made>('sheets');
  return (
    <>
      <Choice
        label="What is to be made"
        value={made}
        onChange={setMade}
        choices={[
          { value: 'sheets', words: 'sheets to print', help: 'true to scale, to prick by' },
          { value: 'files', words: 'files for a machine', help: 'for a laser, a drill or a plotter' },
          {
            value: 'printer',
            words: 'a printer that prints true',
            help: 'measured once, put right ever after',
          },
        ]}
      />
      {made === 'printer' && <MeasurePrinter />}
      {made === 'files' && <CutFiles />}
      {made === 'sheets' && <PrintSheets onMeasurePrinter={() => setMade('printer')} />}
    </>
  );
}

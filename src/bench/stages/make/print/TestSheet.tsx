import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { PaperSize } from '#base/units/paper.ts';
import type { PrinterProfile } from '#paper/calibrate/profile.ts';
import { Message } from '../../../parts/Message.tsx';
import { saveFile } from '../../../parts/save-file.ts';
import { Working } from '../../../parts/Working.tsx';
import { useJob } from '../../../worker/use-job.ts';
import { RulerCheck } from './RulerCheck.tsx';

/** One sheet with nothing but the two rulers, to be printed and measured before a whole set is. It may be skipped. */
export function TestSheet({
  paper,
  printer,
  onMeasurePrinter,
}: {
  readonly paper: PaperSize;
  readonly printer: PrinterProfile | null;
  readonly onMeasurePrinter: () => void;
}) {
  const [job, make] = useJob('testSheet');
  const [saved, setSaved] = useState(false);
  const save = async () => {
    const pdf = await make(paper, printer);
    if (!pdf) return;
    const kept = await saveFile(`test-sheet-${paper.name}.pdf`, pdf, 'application/pdf');
    setSaved((before) => before || kept === 'saved');
  };
  return (
    <>
      <p>
        Two rulers on one sheet show whether your printer keeps to scale. Sure of it already? Skip this step.
      </p>
      {job.at === 'work' ? (
        <Working words="Making the test sheet" share={job.share} onCancel={job.cancel} />
      ) : (
        <Button className="button" onPress={save}>
          Make the test sheet for {paper.name}
        </Button>
      )}
      {job.at === 'broken' && <Message kind="trouble">{job.why}</Message>}
      {saved && (
        <>
          <p>Print it at 100 %, and type what its rulers measure.</p>
          <RulerCheck onMeasurePrinter={onMeasurePrinter} />
        </>
      )}
    </>
  );
}

import { Button } from 'react-aria-components';
import type { PaperSize } from '#base/units/paper.ts';
import type { PrinterProfile } from '#paper/calibrate/profile.ts';
import { fileName } from '../../../parts/file-name.ts';
import { Message } from '../../../parts/Message.tsx';
import { saveFile } from '../../../parts/save-file.ts';
import { Working } from '../../../parts/Working.tsx';
import { useJob } from '../../../worker/use-job.ts';
import { TroubleMessage } from '../Trouble.tsx';

/** The sheet to print and measure: the first with the correction off, the second one with it on. */
export function SheetToMeasure({
  paper,
  use,
  printer,
}: {
  readonly paper: PaperSize;
  readonly use: PrinterProfile['use'];
  readonly printer: PrinterProfile | null;
}) {
  const [job, make] = useJob('calibrationSheet');
  const save = async () => {
    const made = await make(paper, use, printer);
    if (!made?.ok) return;
    const name = printer ? `${fileName(printer.name)}-proof` : `calibration-${paper.name}`;
    await saveFile(`${name}.pdf`, made.value, 'application/pdf');
  };
  if (job.at === 'work') return <Working words="Making the sheet" share={job.share} onCancel={job.cancel} />;
  return (
    <>
      <Button className="button main" onPress={save}>
        {printer ? `Make the sheet that proves ${printer.name}` : `Make the sheet for ${paper.name}`}
      </Button>
      {!printer && (
        <p>
          {use === 'print'
            ? 'Print it at 100 %.'
            : 'Print it at 100 % on a printer that prints true, and copy it at 100 %.'}{' '}
          Measure with one good ruler, from the left edge of one line to the left edge of the other, and never
          from the edge of the paper.
        </p>
      )}
      {job.at === 'done' && !job.made.ok && <TroubleMessage trouble={job.made.trouble} />}
      {job.at === 'broken' && <Message kind="trouble">{job.why}</Message>}
    </>
  );
}

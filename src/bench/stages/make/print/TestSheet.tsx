import { Button } from 'react-aria-components';
import type { PaperSize } from '#base/units/paper.ts';
import type { PrinterProfile } from '#paper/calibrate/profile.ts';
import { Message } from '../../../parts/Message.tsx';
import { saveFile } from '../../../parts/save-file.ts';
import { Working } from '../../../parts/Working.tsx';
import { useJob } from '../../../worker/use-job.ts';

/** One sheet with nothing but the two rulers, to be printed and measured before a whole set is. */
export function TestSheet({
  paper,
  printer,
}: {
  readonly paper: PaperSize;
  readonly printer: PrinterProfile | null;
}) {
  const [job, make] = useJob('testSheet');
  const save = async () => {
    const pdf = await make(paper, printer);
    if (pdf) await saveFile('test-sheet.pdf', pdf, 'application/pdf');
  };
  if (job.at === 'work')
    return <Working words="Making the test sheet" share={job.share} onCancel={job.cancel} />;
  return (
    <>
      {job.at === 'broken' && <Message kind="trouble">{job.why}</Message>}
      <Button className="button" onPress={save}>
        Make the test sheet for {paper.name}
      </Button>
    </>
  );
}

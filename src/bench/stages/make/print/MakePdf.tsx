import { useState } from 'react';
import { Button } from 'react-aria-components';
import { printedInWords } from '#jobs/words/print.ts';
import { useWork } from '../../../document/use-design.ts';
import { fileName } from '../../../parts/file-name.ts';
import { Message } from '../../../parts/Message.tsx';
import { saveFile } from '../../../parts/save-file.ts';
import { Working } from '../../../parts/Working.tsx';
import type { PrintMade, PrintRequest } from '../../../worker/make/print.ts';
import { useJob } from '../../../worker/use-job.ts';
import { TroubleMessage } from '../Trouble.tsx';

/** Makes the PDF and saves it; what is to be known of it stays until another is made. */
export function MakePdf({ request, can }: { readonly request: PrintRequest; readonly can: boolean }) {
  const { name } = useWork();
  const [job, make] = useJob('print');
  const [made, setMade] = useState<{ readonly of: PrintRequest; readonly print: PrintMade } | null>(null);
  const { paper, way } = request.wish;
  const save = async () => {
    let print = made?.of === request ? made.print : null;
    if (!print) {
      const result = await make(request);
      if (!result?.ok) return;
      print = result.value;
      setMade({ of: request, print });
    }
    await saveFile(`${fileName(name)}-${way}-${paper.name}.pdf`, print.pdf, 'application/pdf');
  };
  if (job.at === 'work') {
    return <Working words="Making the PDF" share={job.share} onCancel={job.cancel} />;
  }
  const ready = made?.of === request ? made.print : null;
  return (
    <>
      <Button className="button main" onPress={save} isDisabled={!can}>
        Make the PDF for {paper.name}
      </Button>
      {ready && (
        <>
          <Message kind="good">{printedInWords(ready.sheets)}</Message>
          {ready.notes.length > 0 && (
            <ul>
              {ready.notes.map((note) => (
                <li key={note}>{note}</li>
              ))}
            </ul>
          )}
        </>
      )}
      {job.at === 'done' && !job.made.ok && <TroubleMessage trouble={job.made.trouble} />}
      {job.at === 'broken' && <Message kind="trouble">{job.why}</Message>}
    </>
  );
}

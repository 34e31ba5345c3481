import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Judgement } from '#craft/light/judgement.ts';
import { pictureTroubleInWords } from '#jobs/words/picture.ts';
import { useDesignState, useWork } from '../../document/use-design.ts';
import { Choice } from '../../parts/Choice.tsx';
import { fileName } from '../../parts/file-name.ts';
import { Message } from '../../parts/Message.tsx';
import { PaperChoice } from '../../parts/PaperChoice.tsx';
import { saveFile } from '../../parts/save-file.ts';
import { Working } from '../../parts/Working.tsx';
import { usePaper } from '../../store/printers.ts';
import { useJob } from '../../worker/use-job.ts';

/** The photo with the verdicts on it and a map true to scale to prick again by, as a PDF. */
export function CheckMap({ file, judgement }: { readonly file: File; readonly judgement: Judgement }) {
  const { name } = useWork();
  const { pattern } = useDesignState();
  const [paper, setPaper] = usePaper();
  const [side, setSide] = useState<'front' | 'back'>('front');
  const [job, make] = useJob('checkMap');
  if (paper === undefined) return null;
  const save = async () => {
    if (!paper) return;
    const made = await make(pattern, file, judgement, { paper, side });
    if (made?.ok) await saveFile(`${fileName(name)}-check-${paper.name}.pdf`, made.value, 'application/pdf');
  };
  return (
    <>
      <p>
        The photo with its signs, and a map of the card true to scale. Print it at 100 %, lay it on the card,
        and prick what is marked.
      </p>
      <PaperChoice paper={paper} onChange={setPaper} />
      <Choice
        label="The map shows the card"
        value={side}
        onChange={setSide}
        choices={[
          { value: 'front', words: 'from the front' },
          { value: 'back', words: 'from the back', help: 'left and right change places' },
        ]}
      />
      {job.at === 'work' ? (
        <Working words="Making the map" share={job.share} onCancel={job.cancel} />
      ) : (
        paper && (
          <Button className="button main" onPress={save}>
            Make the map for {paper.name}
          </Button>
        )
      )}
      {job.at === 'done' && job.made.ok && <Message kind="good">The map is made.</Message>}
      {job.at === 'done' && !job.made.ok && (
        <Message kind="trouble">{pictureTroubleInWords(job.made.trouble)}</Message>
      )}
      {job.at === 'broken' && <Message kind="trouble">{job.why}</Message>}
    </>
  );
}

import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { PaperSize } from '#base/units/paper.ts';
import { threadOf } from '#craft/size/thread.ts';
import type { SizeWish } from '#jobs/size/wish.ts';
import { sizeTroubleInWords } from '#jobs/words/size-trouble.ts';
import { troubleInWords } from '#jobs/words/trouble.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { ThreadEntry } from '#pattern/threads/thread-list.ts';
import { Fold } from '../../parts/Fold.tsx';
import { Message } from '../../parts/Message.tsx';
import { PaperChoice } from '../../parts/PaperChoice.tsx';
import { saveFile } from '../../parts/save-file.ts';
import { Working } from '../../parts/Working.tsx';
import { usePaper } from '../../store/printers.ts';
import { useJob } from '../../worker/use-job.ts';
import { adviceHere } from './advice.ts';
import type { Asked } from './asked.ts';

/** The table of her threads against sizes, and how the best of them covers, to print and lay beside the drawer. */
export function TableToPrint({
  pattern,
  asked,
  wish,
  threads,
  spacing,
}: {
  readonly pattern: Pattern;
  readonly asked: Asked;
  readonly wish: SizeWish;
  readonly threads: readonly ThreadEntry[];
  /** From one footside pin to the next, mm; null where nothing tells. */
  readonly spacing: number | null;
}) {
  const [paper, setPaper] = usePaper();
  const [job, make] = useJob('sizeTable');
  const [trouble, setTrouble] = useState<string | null>(null);
  const all =
    asked.thread && !threads.some(({ name }) => name === asked.thread?.name)
      ? [asked.thread, ...threads]
      : threads;
  const save = async (paper: PaperSize) => {
    const read = all.flatMap((entry) => {
      const thread = threadOf(entry);
      return thread.ok ? [thread.value] : [];
    });
    const made = await make(pattern, { ...wish, target: null, threads: read }, paper);
    setTrouble(made && !made.ok ? troubleInWords(made.trouble) : null);
    if (made?.ok) await saveFile('threads-and-sizes.pdf', made.value, 'application/pdf');
  };
  return (
    <Fold label="A table to lay beside your threads">
      {all.length === 0 || spacing === null ? (
        <p>
          {all.length === 0
            ? 'Put some threads in your list first.'
            : sizeTroubleInWords({ kind: 'size-no-spacing' }, adviceHere)}
        </p>
      ) : (
        <>
          <p>
            One line is a thread, one column a size of the pattern. The second sheet shows how the cloth
            stitch will cover with the thread that suits best.
          </p>
          {paper !== undefined && <PaperChoice paper={paper} onChange={setPaper} />}
          {job.at === 'work' && <Working words="Making the table" share={job.share} onCancel={job.cancel} />}
          {job.at === 'broken' && <Message kind="trouble">{job.why}</Message>}
          {trouble && <Message kind="caution">{trouble}</Message>}
          {job.at !== 'work' && (
            <Button className="button" isDisabled={!paper} onPress={() => void save(paper!)}>
              Save the table as a PDF
            </Button>
          )}
        </>
      )}
    </Fold>
  );
}

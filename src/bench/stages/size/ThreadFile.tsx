import { useState } from 'react';
import { Button } from 'react-aria-components';
import { countInWords } from '#jobs/words/number.ts';
import { threadListTroubleInWords } from '#jobs/words/threads.ts';
import { readThreadList, type ThreadEntry, writeThreadList } from '#pattern/threads/thread-list.ts';
import { FileButton } from '../../parts/FileButton.tsx';
import { Message } from '../../parts/Message.tsx';
import { saveFile } from '../../parts/save-file.ts';

/** A list of threads from a file, added to her own, and her own as a file. */
export function ThreadFile({
  threads,
  onThreads,
}: {
  readonly threads: readonly ThreadEntry[];
  readonly onThreads: (threads: readonly ThreadEntry[]) => void;
}) {
  const [said, setSaid] = useState<{ readonly kind: 'good' | 'trouble'; readonly words: string } | null>(
    null,
  );
  const open = async (file: File) => {
    const list = readThreadList(await file.text());
    if (list.ok) onThreads(list.value);
    setSaid(
      list.ok
        ? { kind: 'good', words: `${countInWords(list.value.length, 'thread')} put in your list.` }
        : { kind: 'trouble', words: threadListTroubleInWords(list.trouble) },
    );
  };
  return (
    <>
      <FileButton words="Open a list of threads" kinds={['.json', '.txt']} take={(file) => void open(file)} />
      {threads.length > 0 && (
        <Button
          className="button"
          onPress={() =>
            void saveFile(
              'my-threads.json',
              new TextEncoder().encode(writeThreadList(threads)),
              'application/json',
            )
          }
        >
          Save my list as a file
        </Button>
      )}
      {said && <Message kind={said.kind}>{said.words}</Message>}
    </>
  );
}

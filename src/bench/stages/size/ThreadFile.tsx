import { useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import { countInWords } from '#jobs/words/number.ts';
import { threadListTroubleInWords } from '#jobs/words/threads.ts';
import { readThreadList, type ThreadEntry } from '#pattern/threads/thread-list.ts';
import { Message } from '../../parts/Message.tsx';

/** A list of threads from a file, added to her own. */
export function ThreadFile({ onThreads }: { readonly onThreads: (threads: readonly ThreadEntry[]) => void }) {
  const [said, setSaid] = useState<{ readonly kind: 'good' | 'trouble'; readonly words: string } | null>(
    null,
  );
  const open = async (file: File | undefined) => {
    if (!file) return;
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
      <FileTrigger acceptedFileTypes={['.json', '.txt']} onSelect={(files) => void open(files?.[0])}>
        <Button className="button">Open a list of threads</Button>
      </FileTrigger>
      {said && <Message kind={said.kind}>{said.words}</Message>}
    </>
  );
}

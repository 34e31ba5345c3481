import { useState } from 'react';
import { countInWords } from '#jobs/words/number.ts';
import { threadListTroubleInWords } from '#jobs/words/threads.ts';
import { readThreadList, type ThreadEntry } from '#pattern/threads/thread-list.ts';
import { FileButton } from '../../parts/FileButton.tsx';
import { Message } from '../../parts/Message.tsx';

/** A list of threads from a file, added to her own. */
export function ThreadFile({ onThreads }: { readonly onThreads: (threads: readonly ThreadEntry[]) => void }) {
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
      {said && <Message kind={said.kind}>{said.words}</Message>}
    </>
  );
}

import { useState } from 'react';
import type { Result } from '#base/result.ts';
import type { Trouble } from '#jobs/trouble.ts';
import { troubleInWords } from '#jobs/words/trouble.ts';
import { FileButton } from '../../parts/FileButton.tsx';
import { Message } from '../../parts/Message.tsx';

/** A small file that other work has left: opened, or refused with the reason. */
export function ReadFile<Value>({
  words,
  read,
  onRead,
}: {
  readonly words: string;
  readonly read: (bytes: Uint8Array) => Result<Value, Trouble>;
  readonly onRead: (value: Value) => void;
}) {
  const [trouble, setTrouble] = useState<string | null>(null);
  const open = async (file: File) => {
    const made = read(new Uint8Array(await file.arrayBuffer()));
    setTrouble(made.ok ? null : troubleInWords(made.trouble));
    if (made.ok) onRead(made.value);
  };
  return (
    <>
      <FileButton words={words} kinds={['.json']} take={(file) => void open(file)} />
      {trouble && (
        <Message kind="trouble" onDismiss={() => setTrouble(null)}>
          {trouble}
        </Message>
      )}
    </>
  );
}

import { useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import { readPreset } from '#jobs/cut/preset.ts';
import { troubleInWords } from '#jobs/words/trouble.ts';
import type { CuttingPreset } from '#paper/cut/preset.ts';
import { Message } from '../../../parts/Message.tsx';

/** The file in which a shop's wishes are kept, where there is one. */
export function PresetChoice({
  preset,
  onChange,
}: {
  readonly preset: CuttingPreset | null;
  readonly onChange: (preset: CuttingPreset | null) => void;
}) {
  const [trouble, setTrouble] = useState<string | null>(null);
  const open = async (file: File) => {
    const read = readPreset(new Uint8Array(await file.arrayBuffer()));
    setTrouble(read.ok ? null : troubleInWords(read.trouble));
    if (read.ok) onChange(read.value);
  };
  return (
    <>
      {preset ? (
        <div className="row">
          <p className="fill">
            Preset: <strong>{preset.name}</strong>
          </p>
          <Button className="button" onPress={() => onChange(null)}>
            Without it
          </Button>
        </div>
      ) : (
        <FileTrigger acceptedFileTypes={['.json']} onSelect={(files) => files?.[0] && void open(files[0])}>
          <Button className="button">Open a preset of your shop</Button>
        </FileTrigger>
      )}
      {trouble && (
        <Message kind="trouble" onDismiss={() => setTrouble(null)}>
          {trouble}
        </Message>
      )}
    </>
  );
}

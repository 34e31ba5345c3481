import { useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import { readProfile } from '#jobs/calibrate/profile.ts';
import { troubleInWords } from '#jobs/words/trouble.ts';
import { Message } from '../../../parts/Message.tsx';
import type { Printers } from '../../../store/printers.ts';
import { KeptPrinter } from './KeptPrinter.tsx';

/** Every printer that was measured; one can come from a file too. */
export function KeptPrinters({ printers }: { readonly printers: Printers }) {
  const { profiles, keep, remove } = printers;
  const [trouble, setTrouble] = useState<string | null>(null);
  const open = async (file: File) => {
    const read = readProfile(new Uint8Array(await file.arrayBuffer()));
    setTrouble(read.ok ? null : troubleInWords(read.trouble));
    if (read.ok) keep(read.value);
  };
  return (
    <>
      {profiles.length === 0 && <p>None yet.</p>}
      {profiles.map((profile) => (
        <KeptPrinter
          key={profile.name}
          profile={profile}
          onKeep={keep}
          onRemove={() => remove(profile.name)}
        />
      ))}
      <FileTrigger acceptedFileTypes={['.json']} onSelect={(files) => files?.[0] && void open(files[0])}>
        <Button className="button">Open the file of a printer</Button>
      </FileTrigger>
      {trouble && (
        <Message kind="trouble" onDismiss={() => setTrouble(null)}>
          {trouble}
        </Message>
      )}
    </>
  );
}

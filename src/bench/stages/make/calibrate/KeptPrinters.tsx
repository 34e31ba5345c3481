import { readProfile } from '#jobs/calibrate/profile.ts';
import type { Printers } from '../../../store/printers.ts';
import { ReadFile } from '../ReadFile.tsx';
import { KeptPrinter } from './KeptPrinter.tsx';

/** Every printer that was measured; one can come from a file too. */
export function KeptPrinters({ printers }: { readonly printers: Printers }) {
  const { profiles, keep, remove } = printers;
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
      <ReadFile words="Open the file of a printer" read={readProfile} onRead={keep} />
    </>
  );
}

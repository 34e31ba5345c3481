import { useState } from 'react';
import { Button } from 'react-aria-components';
import { paperNamed } from '#base/units/paper.ts';
import { writeProfile } from '#jobs/calibrate/profile.ts';
import { provedInWords } from '#jobs/words/calibrate.ts';
import type { PrinterProfile } from '#paper/calibrate/profile.ts';
import { announce } from '../../../parts/announce.ts';
import { Fold } from '../../../parts/Fold.tsx';
import { fileName } from '../../../parts/file-name.ts';
import { LengthField } from '../../../parts/LengthField.tsx';
import { Message } from '../../../parts/Message.tsx';
import { saveFile } from '../../../parts/save-file.ts';
import { useJob } from '../../../worker/use-job.ts';
import { TroubleMessage } from '../Trouble.tsx';
import { SheetToMeasure } from './SheetToMeasure.tsx';

/** One measured printer: proved by a second print, saved as a file, removed when a person has said so twice. */
export function KeptPrinter({
  profile,
  onKeep,
  onRemove,
}: {
  readonly profile: PrinterProfile;
  readonly onKeep: (profile: PrinterProfile) => void;
  readonly onRemove: () => void;
}) {
  const { name, paper, date, verified } = profile;
  const [removing, setRemoving] = useState(false);
  const save = () =>
    saveFile(`${fileName(name)}.json`, new Blob([writeProfile(profile)]), 'application/json');
  return (
    <section className="offer" aria-label={name}>
      <p>
        <strong>{name}</strong>, {paper}, measured {date}: {verified ? 'proved' : 'not yet proved'}
      </p>
      <Fold label={`Prove ${name}`}>
        <Proof profile={profile} onKeep={onKeep} />
      </Fold>
      {removing ? (
        <Message kind="caution">
          <p>Remove {name}? It would have to be measured anew.</p>
          <div className="buttons">
            <Button
              className="button danger"
              onPress={() => {
                onRemove();
                announce(`${name} was removed.`);
              }}
            >
              Yes, remove it
            </Button>
            <Button className="button" onPress={() => setRemoving(false)}>
              No, keep it
            </Button>
          </div>
        </Message>
      ) : (
        <div className="buttons">
          <Button className="button" aria-label={`Save ${name} as a file`} onPress={save}>
            Save it as a file
          </Button>
          <Button className="button danger" aria-label={`Remove ${name}`} onPress={() => setRemoving(true)}>
            Remove it
          </Button>
        </div>
      )}
    </section>
  );
}

function Proof({
  profile,
  onKeep,
}: {
  readonly profile: PrinterProfile;
  readonly onKeep: (profile: PrinterProfile) => void;
}) {
  const [job, prove] = useJob('provePrinter');
  const [across, setAcross] = useState<number | null>(null);
  const [down, setDown] = useState<number | null>(null);
  const paper = paperNamed(profile.paper);
  const check = async () => {
    if (across === null || down === null) return;
    const made = await prove(profile, { across, down });
    if (made?.ok) onKeep(made.value);
  };
  return (
    <>
      {paper && <SheetToMeasure paper={paper} use={profile.use} printer={profile} />}
      <p>Print it as before, measure it again, and type what you read.</p>
      <div className="pair">
        <LengthField label="Now across" value={across} onChange={setAcross} />
        <LengthField label="Now down" value={down} onChange={setDown} />
      </div>
      <Button
        className="button main"
        onPress={check}
        isDisabled={across === null || down === null || job.at === 'work'}
      >
        Is it true now?
      </Button>
      {job.at === 'done' && job.made.ok && (
        <Message kind={job.made.value.verified ? 'good' : 'caution'}>{provedInWords(job.made.value)}</Message>
      )}
      {job.at === 'done' && !job.made.ok && <TroubleMessage trouble={job.made.trouble} />}
      {job.at === 'broken' && <Message kind="trouble">{job.why}</Message>}
    </>
  );
}

import { proxy } from 'comlink';
import { useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import { packedInWords, restoredInWords } from '#jobs/words/backup.ts';
import { troubleInWords } from '#jobs/words/trouble.ts';
import { Message, type MessageProps } from '../parts/Message.tsx';
import { saveFile } from '../parts/save-file.ts';
import { Working } from '../parts/Working.tsx';
import { shelfSink, shelfSource } from '../store/backup.ts';
import { listDesigns } from '../store/designs.ts';
import { noteBackup } from '../store/this-browser.ts';
import { useDatabase } from '../store/use-database.ts';
import { type JobState, useJob } from '../worker/use-job.ts';

interface Told {
  readonly kind: MessageProps['kind'];
  readonly sentences: readonly string[];
}

/** Everything on the shelf as one file, and such a file brought back. `onChange` is called after either. */
export function Backup({ any, onChange }: { any: boolean; onChange: () => void }) {
  const database = useDatabase();
  const [backingUp, backUp] = useJob('backUp');
  const [bringing, bringBack] = useJob('bringBack');
  const [told, setTold] = useState<Told | null>(null);

  const make = async () => {
    setTold(null);
    const unreadable: string[] = [];
    const [cards, at] = [await listDesigns(database), Date.now()];
    const made = await backUp(proxy(shelfSource(database, (name) => unreadable.push(name))));
    if (!made) return;
    if (!made.ok) return setTold({ kind: 'trouble', sentences: [troubleInWords(made.trouble)] });
    const { file, count } = made.value;
    const name = `pinlight-backup-${new Date(at).toISOString().slice(0, 10)}.zip`;
    if ((await saveFile(name, file, 'application/zip')) === 'called-off') return;
    const left = [...unreadable, ...made.value.left];
    await noteBackup(database, cards, at);
    setTold({ kind: left.length > 0 ? 'caution' : 'good', sentences: packedInWords({ count, left }) });
    onChange();
  };

  const bring = async (file: File) => {
    setTold(null);
    let came = 0;
    const sink = shelfSink(database, () => came++);
    const made = await bringBack(file, proxy(sink));
    if (!made) {
      if (came > 0) setTold({ kind: 'caution', sentences: [stoppedInWords(came)] });
    } else if (made.ok) {
      const whole = made.value.damaged.length + made.value.lostVersions === 0;
      setTold({ kind: whole ? 'good' : 'caution', sentences: restoredInWords(made.value) });
    } else setTold({ kind: 'trouble', sentences: [troubleInWords(made.trouble)] });
    onChange();
  };

  return (
    <section className="backup" aria-labelledby="backup-title">
      <h2 id="backup-title">Backup</h2>
      <div className="buttons">
        {any && (
          <Button className="button" onPress={make}>
            Back up everything
          </Button>
        )}
        <FileTrigger onSelect={(files) => files?.[0] && void bring(files[0])}>
          <Button className="button">Bring back a backup</Button>
        </FileTrigger>
      </div>
      <Progress state={backingUp} words="Making the backup" />
      <Progress state={bringing} words="Bringing the backup back" />
      {told && (
        <Message kind={told.kind} onDismiss={() => setTold(null)}>
          {told.sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Message>
      )}
    </section>
  );
}

const stoppedInWords = (came: number): string =>
  `Stopped. ${came} pattern${came === 1 ? '' : 's'} had come back by then, and ${came === 1 ? 'is' : 'are'} on the shelf.`;

function Progress({ state, words }: { state: JobState<unknown>; words: string }) {
  if (state.at === 'work') return <Working words={words} share={state.share} onCancel={state.cancel} />;
  if (state.at !== 'broken') return null;
  return <Message kind="trouble">It did not work: {state.why}. Nothing was lost. Try once more.</Message>;
}

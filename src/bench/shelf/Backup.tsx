import { proxy } from 'comlink';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { packedInWords, restoredInWords } from '#jobs/words/backup.ts';
import { troubleInWords } from '#jobs/words/trouble.ts';
import { FileButton } from '../parts/FileButton.tsx';
import { Message, type MessageProps } from '../parts/Message.tsx';
import { saveFile } from '../parts/save-file.ts';
import { Working } from '../parts/Working.tsx';
import { shelfSink, shelfSource } from '../store/backup.ts';
import type { DesignCard } from '../store/database.ts';
import { listDesigns } from '../store/designs.ts';
import { momentOf, noteBroughtBack, noteThisBrowser } from '../store/this-browser.ts';
import { useDatabase } from '../store/use-database.ts';
import { type JobState, useJob } from '../worker/use-job.ts';
import { BackupReminder } from './BackupReminder.tsx';

interface Told {
  readonly kind: MessageProps['kind'];
  readonly sentences: readonly string[];
}

/** Everything on the shelf as one file, and such a file brought back. `onChange` is called after either. */
export function Backup({
  cards,
  onChange,
}: {
  readonly cards: readonly DesignCard[];
  readonly onChange: () => void;
}) {
  const database = useDatabase();
  const [backingUp, backUp] = useJob('backUp');
  const [bringing, bringBack] = useJob('bringBack');
  const [told, setTold] = useState<Told | null>(null);

  const make = async () => {
    setTold(null);
    const unreadable: string[] = [];
    const moment = momentOf(await listDesigns(database), Date.now());
    const made = await backUp(proxy(shelfSource(database, (name) => unreadable.push(name))));
    if (!made) return;
    if (!made.ok) return setTold({ kind: 'trouble', sentences: [troubleInWords(made.trouble)] });
    const { file, count } = made.value;
    const name = `pinlight-backup-${new Date().toISOString().slice(0, 10)}.zip`;
    if ((await saveFile(name, file, 'application/zip')) === 'called-off') return;
    const left = [...unreadable, ...made.value.left];
    await noteThisBrowser(database, { backup: moment });
    setTold({ kind: left.length > 0 ? 'caution' : 'good', sentences: packedInWords({ count, left }) });
    onChange();
  };

  const bring = async (file: File) => {
    setTold(null);
    const ids: string[] = [];
    let full = false;
    const sink = shelfSink(database, {
      came: (id) => ids.push(id),
      full: () => {
        full = true;
      },
    });
    const made = await bringBack(file, proxy(sink));
    // Where even this finds no room, the reminder only comes the sooner.
    if (ids.length > 0) await noteBroughtBack(database, ids, Date.now()).catch(() => {});
    if (!made) {
      if (full) setTold({ kind: 'trouble', sentences: [NO_ROOM, cameInWords(ids.length)] });
      else if (ids.length > 0) setTold({ kind: 'caution', sentences: ['Stopped.', cameInWords(ids.length)] });
    } else if (made.ok) {
      const whole = made.value.damaged.length + made.value.lostVersions === 0;
      setTold({ kind: whole ? 'good' : 'caution', sentences: restoredInWords(made.value) });
    } else setTold({ kind: 'trouble', sentences: [troubleInWords(made.trouble)] });
    onChange();
  };

  return (
    <section className="stack" aria-label="Backup">
      <BackupReminder cards={cards} />
      <div className="buttons">
        {cards.length > 0 && (
          <Button className="button" onPress={make}>
            Back up everything
          </Button>
        )}
        <FileButton words="Bring back a backup" take={(file) => void bring(file)} />
      </div>
      <Progress state={backingUp} words="Making the backup" />
      {(!told || bringing.at === 'work') && <Progress state={bringing} words="Bringing the backup back" />}
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

const NO_ROOM =
  'This browser has no room left. Remove patterns that you do not need here, or bring the backup back on another device.';

const cameInWords = (came: number): string =>
  `${came} pattern${came === 1 ? '' : 's'} had come back by then, and ${came === 1 ? 'is' : 'are'} on the shelf.`;

function Progress({ state, words }: { state: JobState<unknown>; words: string }) {
  if (state.at === 'work') return <Working words={words} share={state.share} onCancel={state.cancel} />;
  if (state.at !== 'broken') return null;
  return <Message kind="trouble">It did not work: {state.why}. Nothing was lost. Try once more.</Message>;
}

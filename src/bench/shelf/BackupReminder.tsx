import { useEffect, useState } from 'react';
import { A_WEEK, WHAT_NEXT } from '../parts/keeping-words.ts';
import { Message } from '../parts/Message.tsx';
import type { DesignCard } from '../store/database.ts';
import { isPromised, type Promised } from '../store/promise.ts';
import { momentOf, noteThisBrowser, readThisBrowser, type ThisBrowser } from '../store/this-browser.ts';
import { useDatabase } from '../store/use-database.ts';
import { backupAge, backupAgeInWords } from './backup-age.ts';

/** How old the last backup is, and where it is too old, a reminder that can be put off. */
export function BackupReminder({ cards }: { cards: readonly DesignCard[] }) {
  const database = useDatabase();
  const [known, setKnown] = useState<ThisBrowser | null>(null);
  const [promised, setPromised] = useState<Promised | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: read again whenever the shelf was, since a backup may have been made.
  useEffect(() => void readThisBrowser(database).then(setKnown), [database, cards]);
  useEffect(() => void isPromised().then(setPromised), []);
  if (!known || !promised || cards.length === 0) return null;
  const age = backupAge(cards, known, Date.now(), promised === 'a-week');
  if (!age.due) return <p className="quiet-words">{backupAgeInWords(age)}</p>;
  const later = async () => {
    await noteThisBrowser(database, { hushed: momentOf(cards, Date.now()) });
    setKnown(await readThisBrowser(database));
  };
  return (
    <Message kind="caution" onDismiss={later}>
      <p>{backupAgeInWords(age)}</p>
      {promised === 'a-week' ? (
        <>
          <p>{A_WEEK}</p>
          <p>{WHAT_NEXT}</p>
        </>
      ) : (
        <p>Browsers may throw away what they keep. A backup is one file with everything in it.</p>
      )}
    </Message>
  );
}

import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { A_WEEK, WHAT_NEXT } from '../parts/keeping-words.ts';
import { Message } from '../parts/Message.tsx';
import { askForPromise, isPromised, type Promised } from '../store/promise.ts';
import { useDatabase, useKeeps } from '../store/use-database.ts';

/** What the browser has promised about the patterns that it keeps, in plain words. */
export function Keeping() {
  const database = useDatabase();
  const keeps = useKeeps();
  const [promised, setPromised] = useState<Promised | null>(null);
  const [refused, setRefused] = useState(false);
  useEffect(() => void isPromised().then(setPromised), []);
  const ask = async () => {
    const answer = await askForPromise(database);
    setPromised(answer);
    setRefused(answer !== 'promised');
  };
  return (
    <section className="stack" aria-labelledby="keeping-title">
      <h2 id="keeping-title">Keeping your patterns</h2>
      {!keeps && (
        <Message kind="trouble">
          This browser keeps nothing (perhaps a private window). Save your patterns as files.
        </Message>
      )}
      {keeps && promised === 'promised' && (
        <Message kind="good">
          This browser has promised to keep your patterns until you remove them. A backup still helps where
          the device itself is lost.
        </Message>
      )}
      {keeps && (promised === 'not-promised' || promised === 'a-week') && (
        <Message kind="caution">
          {promised === 'a-week' ? (
            <>
              <p>{A_WEEK}</p>
              <p>{WHAT_NEXT}</p>
            </>
          ) : (
            <p>
              This browser has not promised to keep your patterns. Where the device runs short of room, or
              after weeks without a visit, it may throw them away: back up everything now and then, on the
              shelf.
            </p>
          )}
          {refused && (
            <p>
              It was asked, and gave no promise. Browsers often do once Pinlight is put on the device, or
              after more visits.
            </p>
          )}
          <Button className="button" onPress={ask}>
            Ask the browser to keep them
          </Button>
        </Message>
      )}
    </section>
  );
}

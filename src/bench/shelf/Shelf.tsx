import { useEffect, useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import { troubleInWords } from '#jobs/words/trouble.ts';
import { Message } from '../parts/Message.tsx';
import type { DesignCard } from '../store/database.ts';
import { createDesign, listDesigns } from '../store/designs.ts';
import { useDatabase } from '../store/use-database.ts';
import { runJob } from '../worker/run.ts';

/** The shelf: every pattern kept in this browser. */
export function Shelf({ open }: { open: (id: string) => void }) {
  const database = useDatabase();
  const [cards, setCards] = useState<readonly DesignCard[] | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    listDesigns(database).then(setCards);
  }, [database]);

  async function take(file: File): Promise<void> {
    const opened = await runJob('open', [new Uint8Array(await file.arrayBuffer())]);
    if (!opened.ok) return setTrouble(troubleInWords(opened.trouble));
    open(await createDesign(database, opened.value, opened.value.pattern.about.name ?? file.name));
  }

  return (
    <main className="page shelf">
      <h1>Pinlight</h1>
      <FileTrigger onSelect={(files) => files?.[0] && void take(files[0])}>
        <Button className="button main">Open a file</Button>
      </FileTrigger>
      {trouble && <Message kind="trouble">{trouble}</Message>}
      <ul>
        {cards?.map(({ id, name, pins }) => (
          <li key={id}>
            <Button className="button" onPress={() => open(id)}>
              {name}, {pins} pins
            </Button>
          </li>
        ))}
      </ul>
    </main>
  );
}

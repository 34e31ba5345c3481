import { useCallback, useEffect, useState } from 'react';
import { Button, FileTrigger, Input, Label, TextField } from 'react-aria-components';
import { troubleInWords } from '#jobs/words/trouble.ts';
import { announce } from '../parts/announce.ts';
import { Message } from '../parts/Message.tsx';
import type { DesignCard } from '../store/database.ts';
import { createDesign, listDesigns, removeDesign, renameDesign } from '../store/designs.ts';
import { useDatabase } from '../store/use-database.ts';
import { runJob } from '../worker/run.ts';
import { Backup } from './Backup.tsx';
import { FromRecipe } from './FromRecipe.tsx';
import { ShelfItem } from './ShelfItem.tsx';

/** The shelf: every pattern kept in this browser. */
export function Shelf({ open }: { open: (id: string) => void }) {
  const database = useDatabase();
  const [cards, setCards] = useState<readonly DesignCard[]>([]);
  const [sought, setSought] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  const refresh = useCallback(() => listDesigns(database).then(setCards), [database]);
  useEffect(() => void refresh(), [refresh]);

  async function take(file: File): Promise<void> {
    const opened = await runJob('open', [new Uint8Array(await file.arrayBuffer())]);
    if (!opened.ok) return setTrouble(troubleInWords(opened.trouble));
    open(await createDesign(database, opened.value, opened.value.pattern.about.name ?? file.name));
  }

  const wanted = sought.trim().toLocaleLowerCase();
  const shown = cards.filter(({ name }) => name.toLocaleLowerCase().includes(wanted));
  return (
    <main className="page shelf">
      <div className="row">
        <h1 className="fill">Pinlight</h1>
        <a className="button quiet" href="#/settings">
          Settings
        </a>
      </div>
      <div className="row">
        <FileTrigger onSelect={(files) => files?.[0] && void take(files[0])}>
          <Button className="button main">Open a file</Button>
        </FileTrigger>
        <FromRecipe />
        <a className="button" href="#/example">
          Open the example
        </a>
      </div>
      <Backup cards={cards} onChange={refresh} />
      {trouble && (
        <Message kind="trouble" onDismiss={() => setTrouble(null)}>
          {trouble}
        </Message>
      )}
      {cards.length > 1 && (
        <TextField className="field" value={sought} onChange={setSought}>
          <Label>Look for a name</Label>
          <Input />
        </TextField>
      )}
      {cards.length === 0 && <p>The shelf is empty. Open a pattern file, or the example, to begin.</p>}
      <ul className="places">
        {shown.map((card) => (
          <ShelfItem
            key={card.id}
            card={card}
            onOpen={() => open(card.id)}
            onRename={async (name) => {
              await renameDesign(database, card.id, name);
              await refresh();
            }}
            onRemove={async () => {
              await removeDesign(database, card.id);
              announce(`${card.name} was removed.`);
              await refresh();
            }}
          />
        ))}
      </ul>
    </main>
  );
}

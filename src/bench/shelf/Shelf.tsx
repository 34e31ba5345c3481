import { useState } from 'react';
import { Button, FileTrigger, Input, Label, TextField } from 'react-aria-components';
import { useDrop } from '../parts/use-drop.ts';
import { Backup } from './Backup.tsx';
import { FromPaper } from './FromPaper.tsx';
import { FromRecipe } from './FromRecipe.tsx';
import { isSought } from './find.ts';
import { Install } from './Install.tsx';
import { Removed } from './Removed.tsx';
import { ShelfItem } from './ShelfItem.tsx';
import { useArrival } from './use-arrival.tsx';
import { useCovers } from './use-covers.ts';
import { useShelf } from './use-shelf.ts';
import './shelf.css';

const NONE: readonly never[] = [];

/** The shelf: every pattern kept in this browser. */
export function Shelf({ open }: { open: (id: string) => void }) {
  const shelf = useShelf();
  const [sought, setSought] = useState('');
  const { take, refuse, shown: arriving } = useArrival(open);
  useDrop(take, refuse);
  const cards = shelf.cards ?? NONE;
  const drawn = useCovers(cards);

  const shown = cards
    .map((card) => ({ card, cover: drawn.get(card.id) ?? card.cover }))
    .filter(({ card: { name }, cover }) =>
      isSought({ name, ...(cover !== 'damaged' && { maker: cover?.maker, lace: cover?.lace }) }, sought),
    );
  return (
    <main className="page shelf">
      <div className="row">
        <h1 className="fill">Pinlight</h1>
        <a className="button quiet" href="#/settings">
          Settings
        </a>
      </div>
      <div className="row">
        <FileTrigger onSelect={(files) => files?.[0] && take(files[0])}>
          <Button className="button main">Open a file</Button>
        </FileTrigger>
        <FromPaper take={take} />
        <FromRecipe />
        <a className="button" href="#/example">
          Open the example
        </a>
        <Install />
      </div>
      {arriving}
      <Backup cards={cards} onChange={shelf.refresh} />
      <Removed cards={shelf.removed} onUndo={shelf.bringBack} onDismiss={shelf.clearAway} />
      {cards.length > 1 && (
        <TextField className="field" value={sought} onChange={setSought}>
          <Label>Look for a name, a maker or a kind of lace</Label>
          <Input dir="auto" />
        </TextField>
      )}
      {shelf.cards?.length === 0 && (
        <p>The shelf is empty. Begin from paper or from a recipe, or open a pattern file or the example.</p>
      )}
      {shown.length === 0 && cards.length > 0 && <p>Nothing on the shelf is called that.</p>}
      <ul className="shelf-grid">
        {shown.map(({ card, cover }) => (
          <ShelfItem
            key={card.id}
            card={card}
            cover={cover}
            onOpen={() => open(card.id)}
            onRename={(name) => shelf.rename(card, name)}
            onRemove={() => shelf.remove(card)}
          />
        ))}
      </ul>
    </main>
  );
}

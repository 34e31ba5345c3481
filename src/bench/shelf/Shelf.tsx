import { useState } from 'react';
import { Input, Label, TextField } from 'react-aria-components';
import { useDrop } from '../parts/use-drop.ts';
import { Backup } from './Backup.tsx';
import { Beginnings } from './Beginnings.tsx';
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
  const empty = shelf.cards?.length === 0;

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
      {empty && (
        <div className="stack">
          <p>
            Pinlight turns a lace pattern on paper, or a few figures, into a card ready to prick: it finds the
            pins, straightens them, fits them to your thread, and prints them true to size. Everything stays
            in this browser.
          </p>
          <p>The shelf is empty. Begin in one of these ways:</p>
        </div>
      )}
      <div className="row">
        <Beginnings take={take} told={empty} />
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

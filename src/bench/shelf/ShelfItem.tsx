import { useId, useState } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
import type { Cover, DesignCard } from '../store/database.ts';
import { CoverPicture } from './CoverPicture.tsx';
import { whenInWords } from './when.ts';

export interface ShelfItemProps {
  readonly card: DesignCard;
  readonly cover: Cover | 'damaged' | undefined;
  readonly onOpen: () => void;
  readonly onRename: (name: string) => void;
  readonly onRemove: () => void;
}

/** One pattern on the shelf: its picture, its name, and what can be done with it. Removing asks once more. */
export function ShelfItem({ card, cover, onOpen, onRename, onRemove }: ShelfItemProps) {
  const [asked, setAsked] = useState<'nothing' | 'name' | 'remove'>('nothing');
  const [name, setName] = useState(card.name);
  const when = useId();
  const pins = `${card.pins} ${card.pins === 1 ? 'pin' : 'pins'}`;
  const shown = cover === 'damaged' ? undefined : cover;
  return (
    <li className="shelf-item">
      <Button
        className="button shelf-open"
        aria-label={`${card.name}, ${pins}`}
        aria-describedby={when}
        onPress={onOpen}
      >
        <CoverPicture picture={shown?.picture} />
        <strong dir="auto">{card.name}</strong>
        <span>{pins}</span>
      </Button>
      <p id={when} className="quiet-words">
        {cover === 'damaged'
          ? 'Damaged: open it to see what is left.'
          : whenInWords(card.changed, Date.now())}
        {shown?.lace && <span dir="auto"> {shown.lace}.</span>}
        {shown?.maker && <span dir="auto"> By {shown.maker}.</span>}
      </p>
      <div className="buttons">
        <Button className="button quiet" aria-label={`Rename ${card.name}`} onPress={() => setAsked('name')}>
          Rename
        </Button>
        <Button
          className="button quiet danger"
          aria-label={`Remove ${card.name}`}
          onPress={() => setAsked('remove')}
        >
          Remove
        </Button>
      </div>
      {asked === 'name' && (
        <form
          className="offer"
          onSubmit={(event) => {
            event.preventDefault();
            if (name.trim()) onRename(name.trim().slice(0, 200));
            setAsked('nothing');
          }}
        >
          <TextField className="field" value={name} onChange={setName} autoFocus>
            <Label>Name</Label>
            <Input maxLength={200} dir="auto" />
          </TextField>
          <div className="buttons">
            <Button type="submit" className="button main">
              Keep this name
            </Button>
            <Button className="button quiet" onPress={() => setAsked('nothing')}>
              Leave it
            </Button>
          </div>
        </form>
      )}
      {asked === 'remove' && (
        <div className="offer">
          <p>This pattern goes from this browser with all its earlier versions.</p>
          <div className="buttons">
            <Button className="button" onPress={() => setAsked('nothing')} autoFocus>
              Keep it
            </Button>
            <Button className="button danger" onPress={onRemove}>
              Remove it
            </Button>
          </div>
        </div>
      )}
    </li>
  );
}

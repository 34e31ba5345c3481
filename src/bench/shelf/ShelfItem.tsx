import { useState } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
import type { DesignCard } from '../store/database.ts';

export interface ShelfItemProps {
  readonly card: DesignCard;
  readonly onOpen: () => void;
  readonly onRename: (name: string) => void;
  readonly onRemove: () => void;
}

/** One pattern on the shelf. Removing asks once more, in plain words, since it is for good. */
export function ShelfItem({ card, onOpen, onRename, onRemove }: ShelfItemProps) {
  const [asked, setAsked] = useState<'nothing' | 'name' | 'remove'>('nothing');
  const [name, setName] = useState(card.name);
  return (
    <li className="shelf-item">
      <Button className="button fill" onPress={onOpen}>
        {card.name}, {card.pins} pins
      </Button>
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
            <Input maxLength={200} />
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
          <p>
            “{card.name}” goes from this browser with all its earlier versions, and cannot be brought back
            from here.
          </p>
          <div className="buttons">
            <Button className="button" onPress={() => setAsked('nothing')} autoFocus>
              Keep it
            </Button>
            <Button className="button danger" onPress={onRemove}>
              Remove it for good
            </Button>
          </div>
        </div>
      )}
    </li>
  );
}

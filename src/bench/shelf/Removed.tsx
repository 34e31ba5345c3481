import { Button } from 'react-aria-components';
import { Message } from '../parts/Message.tsx';
import type { DesignCard } from '../store/database.ts';

/** What was just removed, and the way to have it back. */
export function Removed({
  cards,
  onUndo,
  onDismiss,
}: {
  readonly cards: readonly DesignCard[];
  readonly onUndo: (card: DesignCard) => void;
  readonly onDismiss: () => void;
}) {
  const last = cards.at(-1);
  if (!last) return null;
  return (
    <Message kind="note" onDismiss={onDismiss}>
      <p>
        “<bdi>{last.name}</bdi>” was removed. It can be brought back until you leave the shelf.
      </p>
      <Button className="button" onPress={() => onUndo(last)}>
        Undo
      </Button>
    </Message>
  );
}

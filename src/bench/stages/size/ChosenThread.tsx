import { Button } from 'react-aria-components';
import type { Sizing } from '#jobs/size/size.ts';
import { threadLines } from '#jobs/words/size.ts';
import type { ThreadEntry } from '#pattern/threads/thread-list.ts';
import { ClothCover } from './ClothCover.tsx';

/** The chosen thread: what is known of it, how it covers, and what can be done with it. */
export function ChosenThread({
  entry,
  isKept,
  sizing,
  onSize,
  onKeep,
  onRemove,
}: {
  readonly entry: ThreadEntry;
  /** Whether it is in her list. */
  readonly isKept: boolean;
  /** The pattern as it is. */
  readonly sizing: Sizing;
  readonly onSize: () => void;
  readonly onKeep: () => void;
  readonly onRemove: () => void;
}) {
  const one = sizing.threads.find(({ thread }) => thread.name === entry.name);
  return (
    <div className="offer">
      {one && threadLines(one, sizing.after).map((line) => <p key={line}>{line}</p>)}
      {one && sizing.after.spacing !== null && (
        <ClothCover thread={one.thread} spacing={sizing.after.spacing} sizing={sizing} />
      )}
      <div className="buttons">
        <Button className="button main" onPress={onSize}>
          Size the pattern for it
        </Button>
        {isKept ? (
          <Button className="button danger" onPress={onRemove}>
            Take it off my list
          </Button>
        ) : (
          <Button className="button" onPress={onKeep}>
            Keep it in my list
          </Button>
        )}
      </div>
    </div>
  );
}

import type { LostEdit } from '#craft/draft/redraft/list.ts';
import { lostInWords } from '#jobs/words/draft.ts';
import { countInWords } from '#jobs/words/number.ts';
import { Message } from '../../parts/Message.tsx';

/** Edits by hand whose pins are no longer there, by name. */
export function LostEdits({ lost }: { readonly lost: readonly LostEdit[] }) {
  if (lost.length === 0) return null;
  return (
    <Message kind="caution">
      <p>{countInWords(lost.length, 'edit')} made by hand cannot be kept; Undo brings it all back:</p>
      <ul>
        {lost.slice(0, MOST_TOLD).map((edit) => (
          <li key={`${edit.list} ${edit.id}`}>{lostInWords(edit)}</li>
        ))}
      </ul>
      {lost.length > MOST_TOLD && <p>And {lost.length - MOST_TOLD} more.</p>}
    </Message>
  );
}

const MOST_TOLD = 10;

import { Button } from 'react-aria-components';
import { cautions } from '#paper/cut/cautions.ts';
import { Message } from '../../../parts/Message.tsx';
import { Watched } from '../../../watched/watched.ts';

/** Whether they were read since the page was opened: they are said anew in every session. */
export const cautionsRead = new Watched(false);

/** What comes before the first file for a machine. */
export function Cautions({ read }: { readonly read: boolean }) {
  return (
    <Message kind="caution">
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      {!read && (
        <Button className="button main" onPress={() => cautionsRead.set(true)}>
          I have read this
        </Button>
      )}
    </Message>
  );
}

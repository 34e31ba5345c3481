import { Button } from 'react-aria-components';
import { takeOver, waiting } from '../offline/register.ts';
import { Message } from '../parts/Message.tsx';
import { useWatched } from '../watched/use-watched.ts';

/** Says that a newer Pinlight is here, and waits until the person wants it. */
export function NewerBench() {
  const newer = useWatched(waiting);
  if (!newer) return null;
  return (
    <Message kind="note">
      <p>A newer Pinlight is here. Your patterns stay as they are.</p>
      <Button className="button" onPress={takeOver}>
        Change to it now
      </Button>
    </Message>
  );
}

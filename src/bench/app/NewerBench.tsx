import { useState } from 'react';
import { Button } from 'react-aria-components';
import { renewed, takeOver, waiting } from '../offline/register.ts';
import { Message } from '../parts/Message.tsx';
import { putAllAway } from '../store/open-work.ts';
import { useWatched } from '../watched/use-watched.ts';

/** Says that a newer Pinlight is here, and waits until the person wants it. */
export function NewerBench() {
  const newer = useWatched(waiting);
  const past = useWatched(renewed);
  const [unsaved, setUnsaved] = useState(false);
  if (!newer && !past) return null;
  const change = async () => {
    const saved = await putAllAway();
    setUnsaved(!saved);
    if (!saved) return;
    if (past) location.reload();
    else takeOver();
  };
  return (
    <Message kind={past ? 'caution' : 'note'}>
      {past ? (
        <p>A newer Pinlight was begun in another page. Load this page anew to go on with it here.</p>
      ) : (
        <p>A newer Pinlight is here. Your patterns stay as they are.</p>
      )}
      {unsaved && <p>Your last steps could not be saved in this browser: save them as a file first.</p>}
      <Button className="button" onPress={change}>
        {past ? 'Load the page anew' : 'Change to it now'}
      </Button>
    </Message>
  );
}

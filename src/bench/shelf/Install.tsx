import { useState } from 'react';
import { Button } from 'react-aria-components';
import { installing } from '../offline/install.ts';
import { Message } from '../parts/Message.tsx';
import { useWatched } from '../watched/use-watched.ts';

/** Puts Pinlight on this device like a program, where it is not there yet. */
export function Install() {
  const way = useWatched(installing);
  const [asked, setAsked] = useState(false);
  if (way.by === 'none') return null;
  return (
    <>
      <Button className="button" onPress={() => (way.by === 'browser' ? void way.install() : setAsked(true))}>
        Put Pinlight on this device
      </Button>
      {asked && way.by === 'hand' && (
        <Message kind="note" onDismiss={() => setAsked(false)}>
          <p>Touch Share in the browser's bar, then “Add to Home Screen”, then “Add”.</p>
          <p>
            Pinlight on the home screen has a shelf of its own: back up everything here first, and bring the
            backup back there.
          </p>
        </Message>
      )}
    </>
  );
}

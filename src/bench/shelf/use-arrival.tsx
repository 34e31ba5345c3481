import { type ReactNode, useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { troubleInWords } from '#jobs/words/trouble.ts';
import { Message } from '../parts/Message.tsx';
import { Working } from '../parts/Working.tsx';
import { useDatabase } from '../store/use-database.ts';
import { CalledOff } from '../worker/held-worker.ts';
import { type Taken, takeFile } from './take-file.ts';

type State =
  | { readonly at: 'rest' }
  | { readonly at: 'work'; readonly share: number; readonly stop: () => void }
  | { readonly at: 'trouble'; readonly words: string }
  | { readonly at: 'noted'; readonly taken: Taken };

const REST: State = { at: 'rest' };

/**
 * Files that come to the shelf, one at a time: `take` reads one and opens what it holds; `shown` says how far it is, what
 * is wrong with it, or what to know about it first.
 */
export function useArrival(open: (id: string) => void): {
  readonly take: (file: File) => void;
  readonly refuse: (words: string) => void;
  readonly shown: ReactNode;
} {
  const database = useDatabase();
  const [state, setState] = useState<State>(REST);
  const running = useRef<AbortController | null>(null);
  useEffect(() => () => running.current?.abort(), []);

  async function take(file: File): Promise<void> {
    running.current?.abort();
    const stop = new AbortController();
    running.current = stop;
    const progress = (_: string, share: number) => {
      if (!stop.signal.aborted) setState({ at: 'work', share, stop: () => stop.abort() });
    };
    progress('', 0);
    try {
      const taken = await takeFile(database, file, { progress, signal: stop.signal });
      if (stop.signal.aborted) return;
      if (!taken.ok) setState({ at: 'trouble', words: troubleInWords(taken.trouble) });
      else if (taken.value.notes.length > 0) setState({ at: 'noted', taken: taken.value });
      else open(taken.value.id);
    } catch (error) {
      if (running.current !== stop) return;
      setState(error instanceof CalledOff ? REST : { at: 'trouble', words: BROKEN });
    }
  }

  return {
    take: (file) => void take(file),
    refuse: (words) => setState({ at: 'trouble', words }),
    shown: <Shown state={state} onDismiss={() => setState(REST)} open={open} />,
  };
}

const BROKEN = 'The file could not be taken in. It may be too large for this browser, or be gone by now.';

function Shown({
  state,
  onDismiss,
  open,
}: {
  readonly state: State;
  readonly onDismiss: () => void;
  readonly open: (id: string) => void;
}) {
  const place = useRef<HTMLDivElement>(null);
  // What is said of a file must be seen wherever the button stood.
  useEffect(() => {
    if (state.at !== 'rest') place.current?.scrollIntoView({ block: 'nearest' });
  }, [state.at]);
  if (state.at === 'rest') return null;
  return <div ref={place}>{wordsOf(state, onDismiss, open)}</div>;
}

function wordsOf(
  state: Exclude<State, { readonly at: 'rest' }>,
  onDismiss: () => void,
  open: (id: string) => void,
): ReactNode {
  switch (state.at) {
    case 'work':
      return <Working words="Reading the file" share={state.share} onCancel={state.stop} />;
    case 'trouble':
      return (
        <Message kind="trouble" onDismiss={onDismiss}>
          {state.words}
        </Message>
      );
    case 'noted':
      return (
        <Message kind="note">
          {state.taken.notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
          <Button className="button main" onPress={() => open(state.taken.id)}>
            Open {state.taken.name}
          </Button>
        </Message>
      );
  }
}

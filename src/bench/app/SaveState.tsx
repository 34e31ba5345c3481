import { Message } from '../parts/Message.tsx';
import type { OpenedWork } from '../store/open-work.ts';
import { useWatched } from '../watched/use-watched.ts';
import { SaveFileButton } from './SaveFileButton.tsx';

/** Whether what was done is safe, in two or three words beside the pattern's name. */
export function SaveState({ work, keeps }: { work: OpenedWork; keeps: boolean }) {
  const saved = useWatched(work.saved);
  if (!keeps || saved.at === 'failed') return <strong className="not-saved">NOT saved</strong>;
  return <span className="saved">{saved.at === 'saving' ? 'saving …' : 'saved in this browser'}</span>;
}

/** What went wrong with keeping it, and what to do; nothing where all is well. */
export function SaveTrouble({ work, keeps }: { work: OpenedWork; keeps: boolean }) {
  const saved = useWatched(work.saved);
  if (saved.at === 'copied') {
    return (
      <Message kind="caution">
        Another page changed this pattern meanwhile. What you did here is on the shelf as “{saved.name}”.
      </Message>
    );
  }
  if (keeps && saved.at !== 'failed') return null;
  const why = keeps && saved.at === 'failed' ? WHY[saved.why] : KEEPS_NOTHING;
  return (
    <Message kind="trouble">
      <p>{why} Save it as a file now, so that nothing is lost.</p>
      <SaveFileButton />
    </Message>
  );
}

const KEEPS_NOTHING =
  'This browser keeps nothing (perhaps a private window): what you do is gone when it is closed.';

const WHY = {
  full: 'This browser has no room left for your patterns: the last steps are not saved.',
  closed: 'A newer Pinlight was opened in another page, and this one can no longer save.',
  other: 'This browser could not save the last steps.',
} as const;

import { Button } from 'react-aria-components';
import { threadTable } from '#craft/size/grid.ts';
import { threadOf } from '#craft/size/thread.ts';
import type { Sizing } from '#jobs/size/size.ts';
import { fitInWords, percentInWords } from '#jobs/words/size.ts';
import type { ThreadEntry } from '#pattern/threads/thread-list.ts';
import { Fold } from '../../parts/Fold.tsx';
import type { Threads } from '../../store/threads.ts';
import { AnotherThread } from './AnotherThread.tsx';
import type { Asked } from './asked.ts';
import { ChosenThread } from './ChosenThread.tsx';
import { ThreadFile } from './ThreadFile.tsx';

/** Her own threads, how each suits, and any other that she types. */
export function YourThreads({
  threads,
  asked,
  sizing,
  onAsk,
}: {
  readonly threads: Threads;
  readonly asked: Asked;
  readonly sizing: Sizing;
  readonly onAsk: (more: Partial<Asked>) => void;
}) {
  const { list } = threads;
  const { thread } = asked;
  const isKept = list.some(({ name }) => name === thread?.name);
  const rows = thread && !isKept ? [...list, thread] : list;
  return (
    <section className="stack" aria-label="Your threads">
      <h3>Your threads</h3>
      {rows.length === 0 && <p>None yet. Type what stands on a spool, or open your list.</p>}
      <ul className="threads">
        {rows.map((entry) => (
          <li key={entry.name}>
            <Button
              className="button thread"
              aria-pressed={entry.name === thread?.name}
              onPress={() => onAsk({ thread: entry.name === thread?.name ? null : entry })}
            >
              <strong>{entry.name}</strong>
              <span>{suits(entry, sizing)}</span>
            </Button>
            {entry.name === thread?.name && (
              <ChosenThread
                entry={entry}
                isKept={isKept}
                sizing={sizing}
                onSize={() => onAsk({ aim: 'thread' })}
                onKeep={() => threads.keep([entry])}
                onRemove={() => {
                  threads.remove(entry.name);
                  onAsk({ thread: null });
                }}
              />
            )}
          </li>
        ))}
      </ul>
      <Fold label="Another thread">
        <AnotherThread onThread={(entry) => onAsk({ thread: entry })} />
      </Fold>
      <ThreadFile threads={list} onThreads={threads.keep} />
    </section>
  );
}

/** 'suits; just right with the pattern at 98 %'. */
function suits(entry: ThreadEntry, { after, wish }: Sizing): string {
  const thread = threadOf(entry);
  if (!thread.ok || after.spacing === null) return entry.count ?? entry.fibre;
  const [row] = threadTable([thread.value], after.spacing, wish.wraps, [1]);
  return `${fitInWords[row!.at[0]!.fit]}; just right with the pattern at ${percentInWords(row!.scale)}`;
}

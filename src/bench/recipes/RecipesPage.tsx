import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { LibraryEntry } from '#craft/draft/library/entry.ts';
import { library } from '#craft/draft/library/index.ts';
import type { DraftJob } from '#jobs/draft/draft.ts';
import { troubleInWords } from '#jobs/words/trouble.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { FileButton } from '../parts/FileButton.tsx';
import { Message } from '../parts/Message.tsx';
import { useLate } from '../parts/use-late.ts';
import { Working } from '../parts/Working.tsx';
import { createDesign } from '../store/designs.ts';
import { useDatabase } from '../store/use-database.ts';
import { HeldWorker } from '../worker/held-worker.ts';
import { runJob } from '../worker/run.ts';
import { RecipePicture } from './RecipePicture.tsx';
import './recipes.css';

const NO_RECIPE =
  'this pattern keeps no recipe: it was traced, drawn by hand or arranged since it was drafted. Open it from the shelf, or choose a recipe below.';
const FAULT = 'It could not be drafted. Load the page anew to try once more.';

/** What was drafted and what it is called, or why nothing was. */
type Outcome = { readonly job: DraftJob; readonly name: string } | string;

/** The library as pictures to choose from: a new pattern from nothing but figures. */
export default function RecipesPage({ open }: { readonly open: (id: string) => void }) {
  const database = useDatabase();
  const [drafted, setDrafted] = useState<ReadonlyMap<string, Pattern>>(new Map());
  const [trouble, setTrouble] = useState<string | null>(null);
  /** Stops the drafting that is under way. */
  const [busy, setBusy] = useState<AbortController | null>(null);
  const isLate = useLate(busy !== null);

  useEffect(() => {
    let wanted = true;
    const worker = new HeldWorker();
    (async () => {
      for (const { name, recipe, about } of library) {
        const job = await worker.run('draft', [{ from: 'library', recipe, about }, null]);
        if (!wanted) return;
        if (job.ok) setDrafted((before) => new Map(before).set(name, job.value.file.pattern));
      }
    })().catch(
      () => wanted && setTrouble('The pictures could not be drawn. Every recipe can still be opened.'),
    );
    return () => {
      wanted = false;
      worker.close();
    };
  }, []);

  /** Puts what was drafted on the shelf, and opens it. */
  async function take(made: (signal: AbortSignal) => Promise<Outcome>) {
    if (busy) return;
    const stop = new AbortController();
    setBusy(stop);
    setTrouble(null);
    try {
      const outcome = await made(stop.signal);
      if (typeof outcome === 'string') setTrouble(outcome);
      else open(await createDesign(database, outcome.job.file, outcome.name));
    } catch {
      if (!stop.signal.aborted) setTrouble(FAULT);
    } finally {
      setBusy(null);
    }
  }

  const choose = ({ recipe, about, title }: LibraryEntry) =>
    take(async (signal) => {
      const job = await runJob('draft', [{ from: 'library', recipe, about }, null], { signal });
      return job.ok ? { job: job.value, name: about.name ?? title } : troubleInWords(job.trouble);
    });
  const openFile = (file: File) =>
    take(async (signal) => {
      const job = await runJob('draftFile', [new Uint8Array(await file.arrayBuffer())], { signal });
      if (!job.ok) {
        const why = job.trouble.kind === 'no-recipe' ? NO_RECIPE : troubleInWords(job.trouble);
        return `${file.name}: ${why}`;
      }
      return { job: job.value, name: job.value.file.pattern.about.name ?? file.name };
    });

  return (
    <main className="page">
      <div className="row">
        <a className="button quiet" href="#/">
          Shelf
        </a>
        <h1 className="fill">From a recipe</h1>
        <FileButton words="Open a recipe file" take={(file) => void openFile(file)} />
      </div>
      <p>
        A recipe says how a pattern is made: how far apart the pins stand, how many repeats there are. Choose
        one to begin with; every figure of it can be changed.
      </p>
      {isLate && <Working words="Drafting" share={0} onCancel={() => busy?.abort()} />}
      {trouble && (
        <Message kind="trouble" onDismiss={() => setTrouble(null)}>
          {trouble}
        </Message>
      )}
      <ul className="recipes">
        {library.map((entry) => (
          <li key={entry.name}>
            <Button className="recipe" onPress={() => choose(entry)} isDisabled={busy !== null}>
              <RecipePicture pattern={drafted.get(entry.name) ?? null} />
              <strong>{entry.title}</strong>
              {entry.about.notes && <span>{entry.about.notes}</span>}
            </Button>
          </li>
        ))}
      </ul>
    </main>
  );
}

import { type ComponentType, useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { useDesignState, useWork } from '../document/use-design.ts';
import { SheetContext } from '../sheet/handle.ts';
import { Sheet } from '../sheet/Sheet.tsx';
import type { SheetView } from '../sheet/sheet-view.ts';
import { addressOf, go } from './route.ts';
import { stages } from './stages.ts';

/** The open design: the stages above, the sheet in the middle, what the stage needs beside it. */
export function Workbench({ name, stage }: { name: string; stage: string }) {
  const { id, design } = useWork();
  const { past, future } = useDesignState();
  const [view, setView] = useState<SheetView | null>(null);
  const now = stages.find((one) => one.id === stage) ?? stages[0]!;
  const next = stages[stages.indexOf(now) + 1];
  return (
    <div className="workbench">
      <header className="bar">
        <a className="button quiet" href="#/">
          Shelf
        </a>
        <h1>{name}</h1>
        <Button className="button" onPress={() => design.undo()} isDisabled={past.length === 0}>
          Undo
        </Button>
        <Button className="button" onPress={() => design.redo()} isDisabled={future.length === 0}>
          Redo
        </Button>
      </header>
      <nav aria-label="Stages of the work" className="stages">
        <ol>
          {stages.map((one) => (
            <li key={one.id}>
              <a
                href={addressOf({ at: 'design', id, stage: one.id })}
                aria-current={one === now ? 'step' : undefined}
              >
                {one.title}
              </a>
            </li>
          ))}
        </ol>
      </nav>
      <main className="sheet-place">
        <Sheet onReady={setView} />
      </main>
      <section className="panel" aria-labelledby="stage-title">
        <h2 id="stage-title">{now.title}</h2>
        {view && (
          <SheetContext value={view}>
            <StagePanel key={now.id} load={now.load} />
          </SheetContext>
        )}
        {next && (
          <Button className="button main next" onPress={() => go({ at: 'design', id, stage: next.id })}>
            Next: {next.title}
          </Button>
        )}
      </section>
    </div>
  );
}

function StagePanel({ load }: { load: () => Promise<{ readonly Panel: ComponentType }> }) {
  const [Panel, setPanel] = useState<ComponentType | null>(null);
  useEffect(() => {
    load().then(({ Panel }) => setPanel(() => Panel));
  }, [load]);
  return Panel ? <Panel /> : null;
}

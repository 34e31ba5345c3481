import { type ComponentType, useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { useDesignState } from '../document/use-design.ts';
import { Message } from '../parts/Message.tsx';
import { SheetContext } from '../sheet/handle.ts';
import { Sheet } from '../sheet/Sheet.tsx';
import type { SheetView } from '../sheet/sheet-view.ts';
import type { OpenedWork } from '../store/open-work.ts';
import { useKeeps } from '../store/use-database.ts';
import { About } from './About.tsx';
import { addressOf, go } from './route.ts';
import { SaveFileButton } from './SaveFileButton.tsx';
import { SaveState, SaveTrouble } from './SaveState.tsx';
import { firstStage, nextStage } from './stage-order.ts';
import { stages } from './stages.ts';
import { Versions } from './Versions.tsx';

/** The open design: the stages above, the sheet in the middle, what the stage needs beside it. */
export function Workbench({ work, stage }: { work: OpenedWork; stage: string }) {
  const { id, design, name } = work;
  const keeps = useKeeps();
  const { pattern, past, future, editable } = useDesignState();
  // Where it begins must not change under the hands of somebody who has just made the first pins.
  const [first] = useState(() => firstStage(pattern));
  const [view, setView] = useState<SheetView | null>(null);
  const stageOf = (wanted: string) => stages.find((one) => one.id === wanted);
  const now = stageOf(stage) ?? stageOf(first) ?? stages[0]!;
  const next = nextStage(stages, now, pattern);
  return (
    <div className="workbench">
      <header className="bar">
        <a className="button quiet" href="#/">
          Shelf
        </a>
        <h1 dir="auto">{name}</h1>
        <SaveState work={work} keeps={keeps} />
        <div className="buttons" data-steps>
          <Button
            className="button"
            onPress={() => design.undo()}
            isDisabled={past.length === 0 || !editable}
          >
            Undo
          </Button>
          <Button
            className="button"
            onPress={() => design.redo()}
            isDisabled={future.length === 0 || !editable}
          >
            Redo
          </Button>
        </div>
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
        <SaveTrouble work={work} keeps={keeps} />
        {!editable && (
          <Message kind="caution">
            <p>This pattern is open in another page of this browser. Here it can only be looked at.</p>
            <Button className="button" onPress={() => work.takeOver()}>
              Take it over
            </Button>
          </Message>
        )}
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
        <div className="buttons">
          <SaveFileButton />
          <About />
          <Versions />
        </div>
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

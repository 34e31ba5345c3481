import { type ComponentType, useEffect, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { useDesignState } from '../document/use-design.ts';
import { Message } from '../parts/Message.tsx';
import { SheetContext } from '../sheet/handle.ts';
import { Sheet } from '../sheet/Sheet.tsx';
import type { SheetView } from '../sheet/sheet-view.ts';
import type { StageId } from '../stages/stage.ts';
import { type Place, type Ways, WaysContext } from '../stages/ways.ts';
import type { OpenedWork } from '../store/open-work.ts';
import { useKeeps } from '../store/use-database.ts';
import type { AboutAsked } from './About.tsx';
import { NoPins } from './NoPins.tsx';
import { PanelEnd } from './PanelEnd.tsx';
import { go } from './route.ts';
import { SaveState, SaveTrouble } from './SaveState.tsx';
import { StageList } from './StageList.tsx';
import { firstStage, nextStage } from './stage-order.ts';
import { stages } from './stages.ts';

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
  const [about, setAbout] = useState<AboutAsked | null>(null);
  const [led, setLed] = useState<{ readonly to: StageId; readonly place: Place } | null>(null);
  const ways = useMemo<Ways>(
    () => ({
      toStage: (wanted, place) => {
        setLed(place ? { to: wanted, place } : null);
        go({ at: 'design', id, stage: wanted });
      },
      place: led?.to === now.id ? led.place : null,
      toAbout: (field) => setAbout({ first: field }),
    }),
    [id, led, now],
  );
  const panel = useRef<HTMLElement>(null);
  // A stage begins at its beginning, however far down the one before it had been read.
  useEffect(() => {
    panel.current?.scrollTo(0, 0);
    setAbout(null);
    setLed((one) => (one?.to === now.id ? one : null));
  }, [now]);
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
        <StageList id={id} now={now} />
      </header>
      <main className="sheet-place">
        <Sheet onReady={setView} />
      </main>
      <section className="panel" aria-labelledby="stage-title" ref={panel}>
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
        <NoPins stage={now.id} onGo={ways.toStage} />
        {view && (
          <SheetContext value={view}>
            <WaysContext value={ways}>
              <StagePanel key={now.id} load={now.load} />
            </WaysContext>
          </SheetContext>
        )}
        <PanelEnd about={about} onAbout={setAbout} />
      </section>
      {next && (
        <section className="panel-foot" aria-label="The way on">
          <Button className="button next" onPress={() => go({ at: 'design', id, stage: next.id })}>
            Next: {next.title}
          </Button>
        </section>
      )}
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

import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { useDesignState, useWork } from '../document/use-design.ts';
import { PenOnly } from './PenOnly.tsx';
import { SheetView } from './sheet-view.ts';
import { usePaperUnder } from './use-paper-under.ts';

/** The sheet in the middle of the bench, with the buttons that move it. */
export function Sheet({ onReady }: { onReady: (view: SheetView | null) => void }) {
  const { design, pictures } = useWork();
  const { pattern } = useDesignState();
  const canvas = useRef<HTMLCanvasElement>(null);
  const [view, setView] = useState<SheetView | null>(null);
  useEffect(() => {
    const events = { undo: () => design.undo(), redo: () => design.redo() };
    const made = new SheetView(canvas.current!, design.state().pattern, events);
    setView(made);
    onReady(made);
    return () => {
      onReady(null);
      made.stop();
    };
  }, [design, onReady]);
  useEffect(() => view?.setPattern(pattern), [view, pattern]);
  const { paper } = pattern;
  const under = usePaperUnder(paper && pictures.get(paper.entry), paper);
  useEffect(() => view?.setPaper(under), [view, under]);
  return (
    <>
      <div className="sheet-frame" role="application" aria-label="The pattern" aria-describedby="sheet-keys">
        <canvas ref={canvas} className="sheet" tabIndex={0} />
      </div>
      <p id="sheet-keys" className="only-heard">
        Arrow keys move the cursor, Enter touches what is under it, plus and minus zoom, 0 shows the whole
        sheet.
      </p>
      <div className="sheet-buttons">
        <PenOnly view={view} />
        <Button className="button" data-steps aria-label="Closer" onPress={() => view?.zoomBy(1.5)}>
          <span aria-hidden>+</span> <span className="words">Closer</span>
        </Button>
        <Button className="button" data-steps aria-label="Farther" onPress={() => view?.zoomBy(1 / 1.5)}>
          <span aria-hidden>−</span> <span className="words">Farther</span>
        </Button>
        <Button className="button" onPress={() => view?.showWhole()}>
          Whole sheet
        </Button>
      </div>
    </>
  );
}

import { useEffect, useRef, useState } from 'react';
import type { Pattern } from '#pattern/pattern.ts';
import { SheetView } from './sheet-view.ts';

/** The sheet in the middle of the bench. */
export function Sheet({ pattern, onReady }: { pattern: Pattern; onReady: (view: SheetView) => void }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [view, setView] = useState<SheetView | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the view is made once, and then told of each new pattern.
  useEffect(() => {
    const made = new SheetView(canvas.current!, pattern);
    setView(made);
    onReady(made);
  }, []);
  useEffect(() => view?.setPattern(pattern), [view, pattern]);
  return (
    <div className="sheet-frame" role="application" aria-label="The pattern">
      <canvas ref={canvas} className="sheet" tabIndex={0} />
    </div>
  );
}

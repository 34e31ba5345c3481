import { useEffect } from 'react';
import { Button } from 'react-aria-components';
import { setPreferences, usePreferences } from '../settings/preferences.ts';
import { useWatched } from '../watched/use-watched.ts';
import { Watched } from '../watched/watched.ts';
import type { SheetView } from './sheet-view.ts';

const fingers = matchMedia('(any-pointer: coarse)');
const hasFingers = new Watched(fingers.matches);
fingers.addEventListener('change', () => hasFingers.set(fingers.matches));

/** The switch that leaves the sheet to the pen; shown where the screen feels fingers, and always while it is on. */
export function PenOnly({ view }: { view: SheetView | null }) {
  const { penOnly } = usePreferences();
  const shown = useWatched(hasFingers) || penOnly;
  useEffect(() => view?.setPenOnly(penOnly), [view, penOnly]);
  if (!shown) return null;
  return (
    <>
      {penOnly && <p className="sheet-note">Fingers only move the sheet.</p>}
      <Button
        className={penOnly ? 'button main' : 'button'}
        aria-pressed={penOnly}
        onPress={() => setPreferences({ penOnly: !penOnly })}
      >
        {penOnly ? '✓ Pen only' : 'Pen only'}
      </Button>
    </>
  );
}

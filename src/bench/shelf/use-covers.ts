import { useEffect, useState } from 'react';
import { keepCover } from '../store/cover.ts';
import type { Cover, DesignCard } from '../store/database.ts';
import { readDesign } from '../store/designs.ts';
import { useDatabase } from '../store/use-database.ts';

/** What is known of designs beyond their cards: covers drawn since, and which of them cannot be read. */
export type Covers = ReadonlyMap<string, Cover | 'damaged'>;

/** So many milliseconds' worth of covers are shown at once: showing each by itself would take longer than drawing it. */
const HANDFUL = 300;

/** Draws the covers that are missing or out of date, one after the other, and keeps them. */
export function useCovers(cards: readonly DesignCard[]): Covers {
  const database = useDatabase();
  const [drawn, setDrawn] = useState<Covers>(new Map());
  useEffect(() => {
    let wanted = true;
    (async () => {
      const { drawCover } = await import('./draw-cover.ts');
      const fresh = new Map<string, Cover | 'damaged'>();
      let shown = performance.now();
      const show = () => {
        shown = performance.now();
        setDrawn((before) => new Map([...before, ...fresh]));
      };
      for (const { id, revision, cover } of cards) {
        if (!wanted) return;
        if (cover?.revision === revision) continue;
        const made = await readDesign(database, id)
          .then((stored) => stored && drawCover(stored))
          .catch(() => 'damaged' as const);
        if (!made || !wanted) continue;
        fresh.set(id, made);
        if (performance.now() - shown > HANDFUL) show();
        // A browser that is full keeps no picture; it is drawn again next time.
        if (made !== 'damaged') await keepCover(database, id, made).catch(() => {});
      }
      if (wanted && fresh.size > 0) show();
    })();
    return () => {
      wanted = false;
    };
  }, [database, cards]);
  return drawn;
}

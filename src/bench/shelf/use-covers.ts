import { useEffect, useState } from 'react';
import { keepCover } from '../store/cover.ts';
import type { Cover, DesignCard } from '../store/database.ts';
import { readDesign } from '../store/designs.ts';
import { useDatabase } from '../store/use-database.ts';

/** What is known of designs beyond their cards: covers drawn since, and which of them cannot be read. */
export type Covers = ReadonlyMap<string, Cover | 'damaged'>;

/** Draws the covers that are missing or out of date, one after the other, and keeps them. */
export function useCovers(cards: readonly DesignCard[]): Covers {
  const database = useDatabase();
  const [drawn, setDrawn] = useState<Covers>(new Map());
  useEffect(() => {
    let wanted = true;
    (async () => {
      const { drawCover } = await import('./draw-cover.ts');
      for (const { id, revision, cover } of cards) {
        if (!wanted) return;
        if (cover?.revision === revision) continue;
        const fresh = await readDesign(database, id)
          .then((stored) => stored && drawCover(stored))
          .catch(() => 'damaged' as const);
        if (!fresh || !wanted) continue;
        setDrawn((before) => new Map(before).set(id, fresh));
        // A browser that is full keeps no picture; it is drawn again next time.
        if (fresh !== 'damaged') await keepCover(database, id, fresh).catch(() => {});
      }
    })();
    return () => {
      wanted = false;
    };
  }, [database, cards]);
  return drawn;
}

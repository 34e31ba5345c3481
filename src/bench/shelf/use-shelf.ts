import { useCallback, useEffect, useRef, useState } from 'react';
import { announce } from '../parts/announce.ts';
import type { DesignCard } from '../store/database.ts';
import { listDesigns, renameDesign } from '../store/designs.ts';
import { clearAway, clearAwayOld, putBack, setAside } from '../store/remove.ts';
import { useDatabase } from '../store/use-database.ts';

/** The designs on the shelf, the newest first, and what can be done with them there. */
export function useShelf() {
  const database = useDatabase();
  const [cards, setCards] = useState<readonly DesignCard[] | null>(null);
  const [removed, setRemoved] = useState<readonly DesignCard[]>([]);
  const toClear = useRef(removed);
  toClear.current = removed;
  const refresh = useCallback(() => listDesigns(database).then(setCards), [database]);
  useEffect(() => {
    void refresh();
    void clearAwayOld(database, Date.now());
    return () => {
      for (const { id } of toClear.current) void clearAway(database, id);
    };
  }, [database, refresh]);

  return {
    /** Null until they are read. */
    cards,
    removed,
    refresh,
    async rename(card: DesignCard, name: string) {
      await renameDesign(database, card.id, name);
      await refresh();
    },
    async remove(card: DesignCard) {
      await setAside(database, card.id, Date.now());
      setRemoved([...removed, card]);
      await refresh();
    },
    async bringBack(card: DesignCard) {
      await putBack(database, card.id);
      setRemoved(removed.filter(({ id }) => id !== card.id));
      announce(`${card.name} is back.`);
      await refresh();
    },
    async clearAway() {
      for (const { id } of removed) await clearAway(database, id);
      setRemoved([]);
    },
  };
}

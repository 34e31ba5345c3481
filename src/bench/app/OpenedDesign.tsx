import { useEffect, useState } from 'react';
import { OpenDesign } from '../document/open-design.ts';
import { type OpenWork, WorkContext } from '../document/use-design.ts';
import { DesignJournal } from '../store/design-journal.ts';
import { readDesign } from '../store/designs.ts';
import { useDatabase } from '../store/use-database.ts';
import { Workbench } from './Workbench.tsx';

/** Opens a design from the store and puts it on the bench. */
export function OpenedDesign({ id, stage }: { id: string; stage: string }) {
  const database = useDatabase();
  const [work, setWork] = useState<(OpenWork & { readonly name: string }) | null>(null);
  const [gone, setGone] = useState(false);
  useEffect(() => {
    let wanted = true;
    readDesign(database, id).then((stored) => {
      if (!wanted) return;
      if (!stored) return setGone(true);
      const { card, pattern, past, future, pictures } = stored;
      const state = { pattern, past, future, editable: true };
      const design = new OpenDesign(state, new DesignJournal(database, card, state));
      setWork({ id, design, pictures, name: card.name });
    });
    return () => {
      wanted = false;
    };
  }, [database, id]);
  if (gone) {
    return (
      <main className="page">
        <p>There is no such pattern in this browser.</p>
        <a href="#/">To the shelf</a>
      </main>
    );
  }
  if (!work) return null;
  return (
    <WorkContext value={work}>
      <Workbench name={work.name} stage={stage} />
    </WorkContext>
  );
}

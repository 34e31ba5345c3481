import { useEffect, useState } from 'react';
import { WorkContext } from '../document/use-design.ts';
import { Message } from '../parts/Message.tsx';
import { type OpenedWork, openWork } from '../store/open-work.ts';
import { useDatabase } from '../store/use-database.ts';
import { DamagedDesign } from './DamagedDesign.tsx';
import { Workbench } from './Workbench.tsx';

type Opening =
  | { readonly at: 'opening' }
  | { readonly at: 'open'; readonly work: OpenedWork }
  | { readonly at: 'none' }
  | { readonly at: 'damaged' };

/** Opens a design from the store and puts it on the bench; puts it away again when it is left. */
export function OpenedDesign({ id, stage }: { id: string; stage: string }) {
  const database = useDatabase();
  const [opening, setOpening] = useState<Opening>({ at: 'opening' });
  useEffect(() => {
    let work: OpenedWork | null = null;
    let wanted = true;
    openWork(database, id).then(
      (opened) => {
        if (!wanted) return opened?.close();
        work = opened;
        setOpening(opened ? { at: 'open', work: opened } : { at: 'none' });
      },
      () => setOpening({ at: 'damaged' }),
    );
    return () => {
      wanted = false;
      work?.close();
    };
  }, [database, id]);
  switch (opening.at) {
    case 'opening':
      return null;
    case 'open':
      return (
        <WorkContext value={opening.work}>
          <Workbench work={opening.work} stage={stage} />
        </WorkContext>
      );
    case 'none':
      return (
        <main className="page">
          <Message kind="note">
            There is no such pattern in this browser. It may be on another device.
          </Message>
          <a className="button" href="#/">
            To the shelf
          </a>
        </main>
      );
    case 'damaged':
      return <DamagedDesign id={id} />;
  }
}

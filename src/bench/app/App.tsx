import { Shelf } from '../shelf/Shelf.tsx';
import type { Database } from '../store/database.ts';
import { DatabaseContext } from '../store/use-database.ts';
import { OpenedDesign } from './OpenedDesign.tsx';
import { go, useRoute } from './route.ts';

export function App({ database }: { database: Database }) {
  return (
    <DatabaseContext value={database}>
      <Page />
      <p id="announced" className="only-heard" role="status" />
    </DatabaseContext>
  );
}

function Page() {
  const route = useRoute();
  if (route.at === 'design') return <OpenedDesign key={route.id} id={route.id} stage={route.stage} />;
  return <Shelf open={(id) => go({ at: 'design', id, stage: '' })} />;
}

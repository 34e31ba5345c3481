import { Shelf } from '../shelf/Shelf.tsx';
import type { Database } from '../store/database.ts';
import { OpenedDesign } from './OpenedDesign.tsx';
import { go, useRoute } from './route.ts';

export function App({ database }: { database: Database }) {
  const route = useRoute();
  if (route.at === 'design') {
    return <OpenedDesign key={route.id} database={database} id={route.id} stage={route.stage} />;
  }
  return <Shelf database={database} open={(id) => go({ at: 'design', id, stage: '' })} />;
}

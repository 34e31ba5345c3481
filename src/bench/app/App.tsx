import { lazy, Suspense } from 'react';
import { Shelf } from '../shelf/Shelf.tsx';
import { type Store, StoreContext } from '../store/use-database.ts';
import { NewerBench } from './NewerBench.tsx';
import { OpenExample } from './OpenExample.tsx';
import { OpenedDesign } from './OpenedDesign.tsx';
import { go, useRoute } from './route.ts';
import { Settings } from './Settings.tsx';

const RecipesPage = lazy(() => import('../recipes/RecipesPage.tsx'));

export function App({ store }: { store: Store }) {
  return (
    <StoreContext value={store}>
      <NewerBench />
      <Page />
      <p className="print-instead">
        This page is not printed: a browser would not keep it true to scale. Open the pattern, go to the stage
        Make, and choose “Make the PDF”. Then print the saved file at 100 %.
      </p>
      <p id="announced" className="only-heard" role="status" />
    </StoreContext>
  );
}

function Page() {
  const route = useRoute();
  if (route.at === 'design') return <OpenedDesign key={route.id} id={route.id} stage={route.stage} />;
  if (route.at === 'example') return <OpenExample />;
  if (route.at === 'settings') return <Settings />;
  if (route.at === 'recipes') {
    return (
      <Suspense>
        <RecipesPage open={(id) => go({ at: 'design', id, stage: 'draft' })} />
      </Suspense>
    );
  }
  return <Shelf open={(id) => go({ at: 'design', id, stage: '' })} />;
}

import { createRoot } from 'react-dom/client';
import { watchInstalling } from '../offline/install.ts';
import { keepOffline } from '../offline/register.ts';
import { show } from '../settings/preferences.ts';
import { openDatabase, openMemory } from '../store/database.ts';
import type { Store } from '../store/use-database.ts';
import { App } from './App.tsx';
import { countRepeatedTapsOnce } from './repeated-taps.ts';
import { StoreGone } from './StoreGone.tsx';
import { catchStrayDrops } from './stray-drops.ts';
import '../style/bench.css';

/** Puts the bench on the page. */
export async function start(): Promise<void> {
  show();
  watchInstalling();
  catchStrayDrops();
  countRepeatedTapsOnce();
  const root = createRoot(document.getElementById('bench')!);
  const leave = () => root.render(<StoreGone why="left" />);
  const opened = await openDatabase(leave);
  if (opened === 'newer-store') return root.render(<StoreGone why="newer" />);
  const store: Store =
    opened === 'no-store'
      ? { database: await openMemory(), keeps: false }
      : { database: opened, keeps: true };
  root.render(<App store={store} />);
  await keepOffline();
}

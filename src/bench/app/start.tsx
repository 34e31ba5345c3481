import { createRoot } from 'react-dom/client';
import { show } from '../settings/preferences.ts';
import { openDatabase } from '../store/database.ts';
import { App } from './App.tsx';
import '../style/bench.css';

/** Puts the bench on the page. */
export async function start(): Promise<void> {
  show();
  createRoot(document.getElementById('bench')!).render(<App database={await openDatabase()} />);
}

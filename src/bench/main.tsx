import './worker/policy.ts';
import { toldTooOld } from './app/too-old.ts';

if (!toldTooOld()) {
  const { start } = await import('./app/start.tsx');
  await start();
}

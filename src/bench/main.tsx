import './worker/policy.ts';

const { start } = await import('./app/start.tsx');
await start();

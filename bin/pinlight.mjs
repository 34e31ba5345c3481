#!/usr/bin/env node
// In a clone this builds the program first where its sources have changed; an installed package brings it built.
import { existsSync } from 'node:fs';

const scripts = new URL('../scripts/build.mjs', import.meta.url);
if (existsSync(scripts)) {
  const { bootstrap } = await import('../scripts/bootstrap.mjs');
  bootstrap();
  const { buildCommandIfChanged } = await import('../scripts/build.mjs');
  await buildCommandIfChanged();
}
await import(new URL('../dist/cli/pinlight.mjs', import.meta.url).href);

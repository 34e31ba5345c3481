#!/usr/bin/env node
// In a clone this builds the program first where its sources have changed; an installed package brings it built.
import { existsSync } from 'node:fs';

const scripts = new URL('../scripts/build.mjs', import.meta.url);
if (existsSync(scripts)) {
  const { bootstrap } = await import('../scripts/bootstrap.mjs');
  bootstrap();
  const { buildIfChanged } = await import('../scripts/build.mjs');
  await buildIfChanged();
}
await import(new URL('../dist/pinlight.mjs', import.meta.url).href);

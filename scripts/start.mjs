// The whole job on the example scan, for a first look: makes the folder ready/ and says what to open.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const scan = fileURLToPath(new URL('../examples/rosehip-edging.jpg', import.meta.url));
const folder = fileURLToPath(new URL('../ready', import.meta.url));
const pinlight = fileURLToPath(new URL('../bin/pinlight.mjs', import.meta.url));

const run = spawnSync(process.execPath, [pinlight, 'ready', scan, '-o', folder], { stdio: 'inherit' });
process.exitCode = run.status ?? 1;

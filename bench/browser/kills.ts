/**
 * Kills a browser fifty times at random moments while edits are made in the bench, and counts what was lost. Nothing
 * that was shown as saved, or is older than two seconds, may be.
 */
import { join } from 'node:path';
import { serveBench } from '../../scripts/serve-bench.mjs';
import { killAndReopen } from '../../test/support/bench/kills.ts';

const KILLS = Number(process.argv[2] ?? 50);
const SEED = Number(process.argv[3] ?? 20_261_129);

const bench = await serveBench({ port: 0, folder: join(process.cwd(), 'dist/bench') });
const report = await killAndReopen(bench.address, KILLS, SEED);
await bench.close();
console.log(`seed ${SEED}`);
console.log(`browsers killed                     ${report.kills}`);
console.log(`edits                               ${report.edits}`);
console.log(`lost though shown as saved          ${report.savedLost}`);
console.log(`lost though older than 2 s          ${report.oldLost}`);
console.log(`of the last moment, and not saved   ${report.unsavedLost}`);
console.log(`patterns that were not whole        ${report.broken}`);
if (report.kills < KILLS || report.savedLost + report.oldLost + report.broken > 0) process.exitCode = 1;

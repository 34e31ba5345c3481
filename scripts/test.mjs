// Everything that must hold: types, lint, then all tests, with the independent programs and data they read.
// `npm test -- test/base` runs only the tests under that folder.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { buildCommandIfChanged } from './build.mjs';
import { fetchData } from './outside-data.mjs';
import { installTools } from './outside-tools.mjs';

const home = fileURLToPath(new URL('..', import.meta.url));
const report = fileURLToPath(new URL('../.cache/test-report.json', import.meta.url));
const onCi = !!process.env.CI && process.env.CI !== 'false';

const tally = { passed: 0, failed: 0, skipped: 0 };
/** @type {string[]} */
const skips = [];

for (const trouble of [installTools(), fetchData()]) {
  if (trouble === null) continue;
  if (onCi) count(false, `outside programs and data: ${trouble}`);
  else skips.push(`Checks that need more than this machine has are left out: ${trouble}.`);
}
const tsc = 'node_modules/typescript/bin/tsc';
count(runs(tsc, '-p', 'tsconfig.core.json'), 'types without Node and browser');
count(runs(tsc, '-p', 'tsconfig.bench.json'), 'types of the bench, without Node');
count(runs(tsc, '-p', 'tsconfig.service-worker.json'), 'types of the service worker');
count(runs(tsc, '-p', 'tsconfig.bench-test.json'), 'types of the tests of the bench');
count(runs(tsc, '-p', 'tsconfig.json'), 'types');
count(runs('node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.'), 'lint');
await buildCommandIfChanged();
runTests();

for (const line of skips) console.log(line);
console.log(`${tally.passed} passed, ${tally.failed} failed, ${tally.skipped} skipped`);
process.exitCode = tally.failed === 0 ? 0 : 1;

function runTests() {
  mkdirSync(fileURLToPath(new URL('../.cache', import.meta.url)), { recursive: true });
  rmSync(report, { force: true });
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const passed = runs('node_modules/vitest/vitest.mjs', 'run', ...reporters, ...process.argv.slice(2));
  let results;
  try {
    results = JSON.parse(readFileSync(report, 'utf8'));
  } catch {
    return count(false, 'tests: no report came back');
  }
  tally.passed += results.numPassedTests;
  tally.failed += results.numFailedTests;
  tally.skipped += results.numPendingTests + results.numTodoTests;
  // A file that cannot even be loaded has no tests to count, but it is a failure.
  if (!passed && results.numFailedTests === 0) count(false, 'tests: a test file did not run');
  for (const file of results.testResults) {
    for (const test of file.assertionResults) {
      if (!['skipped', 'pending', 'todo'].includes(test.status)) continue;
      skips.push(`skipped: ${test.fullName}`);
    }
  }
}

/** @param {...string} command a script of a package here, and what it is told */
function runs(...command) {
  return spawnSync(process.execPath, command, { cwd: home, stdio: 'inherit' }).status === 0;
}

/** @param {boolean} passed @param {string} what */
function count(passed, what) {
  tally[passed ? 'passed' : 'failed'] += 1;
  console.log(`${passed ? 'passed' : 'FAILED'}: ${what}`);
}

import { loadavg } from 'node:os';
import { join } from 'node:path';
import { serveBench } from '../../../scripts/serve-bench.mjs';
import { limitsMissed } from './report.ts';

/** Measures the built bench at its address, with the machine's load before and after. Ends with 1 where a limit is missed. */
export async function measureServed(measure: (address: string) => Promise<void>): Promise<void> {
  const load = (): string =>
    loadavg()
      .map((part) => part.toFixed(2))
      .join(' ');
  const server = await serveBench({ port: 0, folder: join(process.cwd(), 'dist/bench') });
  console.log('Work is told as the page’s own (by the clock).');
  console.log(`load of this machine before: ${load()}`);
  await measure(server.address);
  console.log(`load of this machine after: ${load()}`);
  await server.close();
  if (limitsMissed() > 0) process.exitCode = 1;
}

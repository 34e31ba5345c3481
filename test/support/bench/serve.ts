import { buildBenchIfChanged } from '../../../scripts/build.mjs';
import { type BenchServer, serveBench } from '../../../scripts/serve-bench.mjs';

/** The built bench on a loopback port of its own. */
export async function startBench(): Promise<BenchServer> {
  await buildBenchIfChanged();
  return serveBench({ port: 0 });
}

import { tidyUpWhenStopped } from './files/untidy.ts';
import { run } from './run.ts';

// A reader that goes away (`pinlight … | head`) is no fault of ours or hers.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (fault: NodeJS.ErrnoException) => {
    if (fault.code !== 'EPIPE') throw fault;
  });
}
tidyUpWhenStopped();
process.exitCode = await run(process.argv.slice(2));

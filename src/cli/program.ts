import { Command } from 'commander';
import packageJson from '../../package.json' with { type: 'json' };
import type { ExitCode } from './outcome/exit.ts';
import { clean } from './terminal/clean.ts';
import { addCalibrate } from './verbs/calibrate.ts';
import { addCut } from './verbs/cut.ts';
import { addLook } from './verbs/look.ts';
import { addPrint } from './verbs/print.ts';
import { addReady } from './verbs/ready.ts';
import { addRoute } from './verbs/route.ts';
import { addTrace } from './verbs/trace.ts';
import { addTrue } from './verbs/true.ts';

/** The command as people meet it: its verbs, and the help that explains them. */
export function program(leave: (code: ExitCode) => void): Command {
  const pinlight = new Command('pinlight')
    .description(
      'From a paper lace pattern to a card ready to prick: finds the pins on a scan, straightens them, ' +
        'looks the pattern over, and prints it true to scale.',
    )
    .version(packageJson.version, '-V, --version', 'say which version this is')
    .helpOption('-h, --help', 'say what can be done, and how')
    .helpCommand('help [verb]', 'say more about one verb')
    .showSuggestionAfterError()
    .showHelpAfterError('(pinlight --help says what can be done, pinlight VERB --help how)')
    .exitOverride()
    .configureOutput({
      writeOut: (text) => process.stdout.write(text),
      writeErr: (text) => process.stderr.write(clean(text)),
    });
  for (const add of [addTrace, addTrue, addLook, addPrint, addCalibrate, addReady, addRoute, addCut])
    add(pinlight, leave);
  return pinlight.addHelpText('after', AFTER);
}

const AFTER = `
The usual way, from a scan of a paper pattern to sheets to prick by:
  pinlight ready scan.jpg -o ready

or step by step, with a look at each result:
  pinlight trace scan.jpg -o pattern.json
  pinlight true pattern.json -o trued.json
  pinlight look trued.json
  pinlight print trued.json -o sheets.pdf --way through --paper A4

"-" stands for standard input or output in place of a file.
Exit code: 0 done, 1 faults found in the pattern, 2 the input or the command is no good.`;

import { Command } from 'commander';
import packageJson from '../../package.json' with { type: 'json' };
import type { ExitCode } from './outcome/exit.ts';
import { clean } from './terminal/clean.ts';
import type { AddVerb } from './verbs/verb.ts';

/** Every verb in the order in which help lists them. Each brings what it needs only when it is asked for. */
const VERBS: Readonly<Record<string, () => Promise<AddVerb>>> = {
  draft: async () => (await import('./verbs/draft.ts')).addDraft,
  arrange: async () => (await import('./verbs/arrange.ts')).addArrange,
  size: async () => (await import('./verbs/size.ts')).addSize,
  trace: async () => (await import('./verbs/trace.ts')).addTrace,
  true: async () => (await import('./verbs/true.ts')).addTrue,
  look: async () => (await import('./verbs/look.ts')).addLook,
  print: async () => (await import('./verbs/print.ts')).addPrint,
  calibrate: async () => (await import('./verbs/calibrate.ts')).addCalibrate,
  ready: async () => (await import('./verbs/ready.ts')).addReady,
  route: async () => (await import('./verbs/route.ts')).addRoute,
  cut: async () => (await import('./verbs/cut.ts')).addCut,
  light: async () => (await import('./verbs/light.ts')).addLight,
};

/**
 * The command as people meet it: its verbs, and the help that explains them. Where the first word is a verb, no other is
 * loaded.
 */
export async function program(words: readonly string[], leave: (code: ExitCode) => void): Promise<Command> {
  const pinlight = new Command('pinlight')
    .description(
      'From a paper lace pattern, or from nothing but a few figures, to a card ready to prick: finds or drafts ' +
        'the pins, straightens them, fits the pattern to its thread, looks it over, and prints it true to scale.',
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
  const asked = words[0] ?? '';
  const wanted = Object.hasOwn(VERBS, asked) ? [asked] : Object.keys(VERBS);
  for (const verb of wanted) (await VERBS[verb]!())(pinlight, leave);
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

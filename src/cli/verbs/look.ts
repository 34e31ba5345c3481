import { look } from '#jobs/look.ts';
import { toLookResult } from '#jobs/results/look.ts';
import { resultText } from '#jobs/results/text.ts';
import { findingsInWords } from '#jobs/words/look.ts';
import { openPattern } from '../files/pattern.ts';
import { STANDARD } from '../files/read.ts';
import { writeWhole } from '../files/write.ts';
import { EXIT } from '../outcome/exit.ts';
import { clean } from '../terminal/clean.ts';
import { progressLine } from '../terminal/progress.ts';
import type { AddVerb } from './verb.ts';

interface LookFlags {
  readonly output: string;
  readonly json?: true;
}

/** `look`: looked over before anything is pricked. */
export const addLook: AddVerb = (pinlight, leave) => {
  pinlight
    .command('look')
    .summary('look a pattern over before anything is pricked')
    .description(
      'Looks a pattern over before anything is pricked: gaps, doubled and nearly touching holes, strays, ' +
        'uneven spacing, repeats that do not meet, marks that end nowhere, lines that film would hide, and ' +
        'what the sheet does not say. Ends with exit code 1 where a fault is found.',
    )
    .argument('<pattern>', 'a pattern file, or - for standard input')
    .option('-o, --output <file>', 'where the findings go', STANDARD)
    .option('--json', 'for machines, as docs/schema/look.schema.json describes')
    .action(async (name: string, flags: LookFlags) => {
      const { pattern } = await openPattern(name);
      const line = progressLine();
      const { findings } = look(pattern, line.progress);
      line.clear();
      const text = flags.json
        ? resultText(toLookResult(pattern, findings))
        : clean(findingsInWords(findings));
      await writeWhole(flags.output, text, [name]);
      leave(findings.some(({ severity }) => severity === 'fault') ? EXIT.faults : EXIT.done);
    });
};

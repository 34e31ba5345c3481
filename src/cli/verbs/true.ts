import { resultText } from '#jobs/results/text.ts';
import { straightenPattern } from '#jobs/true/straighten.ts';
import { trueInWords } from '#jobs/words/true.ts';
import { openPattern, patternBytes } from '../files/pattern.ts';
import { writeStandard, writeWhole } from '../files/write.ts';
import { outputOf } from '../options/needed.ts';
import { angle, known, list } from '../options/true.ts';
import { EXIT } from '../outcome/exit.ts';
import { orRefuse } from '../outcome/refused.ts';
import { progressLine } from '../terminal/progress.ts';
import { say } from '../terminal/say.ts';
import type { AddVerb } from './verb.ts';

interface TrueFlags {
  readonly output?: string;
  readonly json?: true;
  readonly angle?: number;
  readonly known?: ReturnType<typeof known>;
  readonly take?: readonly string[];
  readonly leave?: readonly string[];
  readonly addMissing?: true;
  readonly dropStray?: true;
}

/** `true`: straightened, as a proposal that can be taken in parts. */
export const addTrue: AddVerb = (pinlight, leave) => {
  pinlight
    .command('true')
    .summary('straighten the pins, as the ruler does by eye')
    .description(
      'Straightens a pattern: finds the lines, curves and grounds that its pins were meant to stand on and moves ' +
        'them there. A pin that belongs to none of them stays exactly where it is. Pins that seem missing or stray ' +
        'are only proposed. Every part can be taken or left.',
    )
    .argument('<pattern>', 'a pattern file, or - for standard input')
    .option(
      '-o, --output <file>',
      'where the straightened pattern goes (.json, or .pinlight with the picture of the paper)',
    )
    .option('--json', 'for machines: the whole proposal, as docs/schema/true.schema.json describes')
    .option(
      '--angle <degrees>',
      'the true angle of the ground to the footside: undoes what copying has skewed',
      angle,
    )
    .option(
      '--known <pin,pin=mm>',
      'the true distance of two pins (by id, or by place from 0): sets the size right',
      known,
    )
    .option('--leave <parts>', 'leave these parts as they are, such as lattice-1,run-3', list)
    .option('--take <parts>', 'take these parts only, such as lattice-1,missing-2,stray-17', list)
    .option('--add-missing', 'put in every pin that seems missing')
    .option('--drop-stray', 'take out every pin that seems stray')
    .action(async (name: string, flags: TrueFlags) => {
      const output = outputOf(flags);
      const input = await openPattern(name);
      const line = progressLine();
      const trued = orRefuse(
        straightenPattern(
          input.pattern,
          {
            ...(flags.angle !== undefined && { angle: flags.angle }),
            ...(flags.known !== undefined && { distance: flags.known }),
          },
          {
            take: flags.take ?? null,
            leave: flags.leave ?? [],
            addMissing: flags.addMissing ?? false,
            dropStray: flags.dropStray ?? false,
          },
          line.progress,
        ),
        null,
      );
      line.clear();
      if (output !== null) {
        await writeWhole(output, patternBytes({ ...input, pattern: trued.pattern }, output), [name]);
      }
      if (flags.json) await writeStandard(resultText(trued.result));
      const { length } = input.pattern.pins;
      const added = trued.pattern.pins.filter(
        ({ id }) => !input.pattern.pins.some((pin) => pin.id === id),
      ).length;
      for (const sentence of trueInWords(trued.result, {
        added,
        dropped: length + added - trued.pattern.pins.length,
      })) {
        say(sentence);
      }
      leave(EXIT.done);
    });
};

import { nameFromFile } from '#jobs/picture/name.ts';
import { resultText } from '#jobs/results/text.ts';
import { tracePicture } from '#jobs/trace/trace.ts';
import { patternBytes } from '../files/pattern.ts';
import { readInput } from '../files/read.ts';
import { writeStandard, writeWhole } from '../files/write.ts';
import { type AboutFlags, addAboutOptions, saidOf } from '../options/about.ts';
import { outputOf } from '../options/needed.ts';
import { addScaleOptions, type ScaleFlags, scaleGiven } from '../options/scale.ts';
import { EXIT } from '../outcome/exit.ts';
import { orRefuse } from '../outcome/refused.ts';
import { readPicture } from '../picture/read.ts';
import { progressLine } from '../terminal/progress.ts';
import { say } from '../terminal/say.ts';
import type { AddVerb } from './verb.ts';

interface TraceFlags extends ScaleFlags, AboutFlags {
  readonly output?: string;
  readonly json?: true;
}

/** `trace`: picture in, pins out. */
export const addTrace: AddVerb = (pinlight, leave) => {
  const verb = pinlight
    .command('trace')
    .summary('find the pins on a scan of a paper pattern')
    .description(
      'Finds the pins on a scan of a paper pattern or of an old pricked card: the centre and size of each, how ' +
        'sure it is, and why it is in doubt where it is; and the working lines that join them.',
    )
    .argument('<picture>', 'a scan (JPEG, PNG, TIFF or WebP), or - for standard input')
    .option(
      '-o, --output <file>',
      'where the pattern goes (.json, or .pinlight with the picture of the paper)',
    )
    .option(
      '--json',
      'for machines: every mark that may be a pin, as docs/schema/trace.schema.json describes',
    );
  addAboutOptions(addScaleOptions(verb)).action(async (name: string, flags: TraceFlags) => {
    const output = outputOf(flags);
    const given = scaleGiven(flags);
    const picture = orRefuse(await readPicture(await readInput(name), name), name);
    const line = progressLine();
    const found = orRefuse(tracePicture(picture, given, line.progress), name);
    const traced = { ...found, pattern: saidOf(found.pattern, { name: nameFromFile(name), ...flags }) };
    line.clear();
    if (output !== null) await writeWhole(output, patternBytes(traced, output), [name]);
    if (flags.json) await writeStandard(resultText(traced.result));
    for (const note of traced.notes) say(note);
    leave(EXIT.done);
  });
};

import type { Point } from '#base/geometry/point.ts';
import { arrangePattern } from '#jobs/arrange/arrange.ts';
import type { ArrangeStep, PinOnPin } from '#jobs/arrange/steps.ts';
import { toArrangeResult } from '#jobs/results/arrange.ts';
import { resultText } from '#jobs/results/text.ts';
import { arrangedInWords } from '#jobs/words/arrange.ts';
import { openPattern, patternBytes } from '../files/pattern.ts';
import { writeStandard, writeWhole } from '../files/write.ts';
import {
  groundAngle,
  mirrorLine,
  pinOnPin,
  repeatCount,
  scaleFactor,
  stepOf,
  turn,
} from '../options/arrange.ts';
import { badOption } from '../options/bad-option.ts';
import { outputOf } from '../options/needed.ts';
import { EXIT } from '../outcome/exit.ts';
import { orRefuse, Refused } from '../outcome/refused.ts';
import { say } from '../terminal/say.ts';
import type { AddVerb } from './verb.ts';

interface ArrangeFlags {
  readonly output?: string;
  readonly json?: true;
  readonly step?: Point;
}

/** A step as it was asked for: the other pattern of a join is still in its file. */
type Asked =
  | Exclude<ArrangeStep, { readonly kind: 'join' }>
  | { readonly kind: 'join'; readonly file: string; readonly on: PinOnPin | null };

/** `arrange`: whole patterns mirrored, turned, repeated, joined. */
export const addArrange: AddVerb = (pinlight, leave) => {
  const asked: Asked[] = [];
  const arrange = pinlight
    .command('arrange')
    .summary('mirror, turn, scale, repeat or join whole patterns')
    .description(
      'Arranges whole patterns: mirrors, turns and scales them, brings their ground to another angle, repeats them ' +
        'and joins them to others. Pins that come to stand on each other are one. What is asked for is done in the ' +
        'order in which it is written, and any of it may come more than once.',
    )
    .argument('<pattern>', 'a pattern file, or - for standard input')
    .option('-o, --output <file>', 'where the arranged pattern goes')
    .option(
      '--mirror [line]',
      'upright (left and right change sides), level, or degrees; upright if not said',
    )
    .option('--turn <degrees>', 'clockwise, about its middle')
    .option('--scale <percent>', 'such as 71% or 1.41; pins and holes keep their size')
    .option('--ground-angle <degrees>', 'the ground at another angle to the footside, motifs as they are')
    .option('--repeat <count>', 'so many times, one after the other')
    .option(
      '--step <across;down>',
      'how far each repeat lies from the one before, where the pattern does not say',
      stepOf,
    )
    .option('--join <pattern>', 'with another pattern, as it lies')
    .option('--on <pin=pin>', 'lays the pattern that was joined last so that its pin is on this one')
    .option('--json', 'for machines, as docs/schema/arrange.schema.json describes');
  const on = (option: string, take: (text: string) => Asked) =>
    arrange.on(`option:${option}`, (text: string) => asked.push(take(text)));
  on('mirror', (text) => ({ kind: 'mirror', line: mirrorLine(text) }));
  on('turn', (text) => ({ kind: 'turn', degrees: turn(text) }));
  on('scale', (text) => ({ kind: 'scale', factor: scaleFactor(text) }));
  on('ground-angle', (text) => ({ kind: 'ground-angle', ...groundAngle(text) }));
  on('repeat', (text) => ({ kind: 'repeat', count: repeatCount(text), step: null }));
  on('join', (file) => ({ kind: 'join', file, on: null }));
  arrange.on('option:on', (text: string) => {
    const last = asked.at(-1);
    if (last?.kind !== 'join') badOption('--on', text, 'it behind the --join that it is about');
    asked[asked.length - 1] = { ...last, on: pinOnPin(text) };
  });

  arrange.action(async (name: string, flags: ArrangeFlags) => {
    const output = outputOf(flags);
    if (asked.length === 0) throw new Refused({ kind: 'nothing-to-arrange' }, null);
    const input = await openPattern(name);
    const steps: ArrangeStep[] = [];
    for (const one of asked) {
      if (one.kind === 'join')
        steps.push({ kind: 'join', other: (await openPattern(one.file)).pattern, on: one.on });
      else steps.push(one.kind === 'repeat' ? { ...one, step: flags.step ?? null } : one);
    }
    const arranged = orRefuse(arrangePattern(input.pattern, steps), name);
    if (output !== null) {
      const files = [name, ...asked.flatMap((one) => (one.kind === 'join' ? one.file : []))];
      const bytes = patternBytes({ ...input, pattern: arranged.pattern }, output);
      await writeWhole(output, bytes, files);
    }
    if (flags.json) await writeStandard(resultText(toArrangeResult(arranged)));
    for (const sentence of arrangedInWords(arranged, input.pattern.recipe !== undefined)) say(sentence);
    leave(EXIT.done);
  });
};

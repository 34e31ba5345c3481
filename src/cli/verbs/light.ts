import { checkCard } from '#jobs/light/light.ts';
import { toLightResult } from '#jobs/results/light.ts';
import { resultText } from '#jobs/results/text.ts';
import { judgementInWords, lightNoteInWords } from '#jobs/words/light.ts';
import { pictureNoteInWords } from '#jobs/words/picture.ts';
import { openPattern } from '../files/pattern.ts';
import { readInput, STANDARD } from '../files/read.ts';
import { writeStandard, writeWhole } from '../files/write.ts';
import { lengthOf } from '../options/print.ts';
import { EXIT } from '../outcome/exit.ts';
import { orRefuse } from '../outcome/refused.ts';
import { readPicture } from '../picture/read.ts';
import { clean } from '../terminal/clean.ts';
import { progressLine } from '../terminal/progress.ts';
import { say } from '../terminal/say.ts';
import type { AddVerb } from './verb.ts';

interface LightFlags {
  readonly json?: true;
  readonly cardThickness?: number;
}

/** `light`: the pricked card, held to the light, against its pattern. */
export const addLight: AddVerb = (pinlight, leave) => {
  pinlight
    .command('light')
    .summary('check a pricked card, held against the light, by its pattern')
    .description(
      'Checks a photo of a pricked card against its pattern: which holes are missing, off their places, oval or too ' +
        'wide, and which are too many. Hold the card against a window or a lamp, so that the holes shine; it may lie ' +
        'any way and either side up. Ends with exit code 1 where a fault is found.',
    )
    .argument('<pattern>', 'the pattern file')
    .argument('<photo>', 'a photo or scan of the card (JPEG, PNG, TIFF or WebP)')
    .option('--json', 'for machines, as docs/schema/light.schema.json describes')
    .option(
      '--card-thickness <length>',
      'how thick the card is: tells how far the needle leant where a hole is oval',
      lengthOf('--card-thickness', '0.3 mm'),
    )
    .action(async (patternName: string, photoName: string, flags: LightFlags) => {
      const { pattern } = await openPattern(patternName);
      const photo = orRefuse(await readPicture(await readInput(photoName), photoName), photoName);
      const line = progressLine();
      const judgement = orRefuse(
        checkCard(pattern, photo, flags.cardThickness ?? null, line.progress),
        photoName,
      );
      line.clear();
      const notes = [...photo.notes.map(pictureNoteInWords), ...judgement.notes.map(lightNoteInWords)];
      if (flags.json) await writeStandard(resultText(toLightResult(judgement, notes)));
      else await writeWhole(STANDARD, clean(judgementInWords(judgement)), [patternName, photoName]);
      for (const note of notes) say(note);
      const { missing, extra, offCentre, oval, large } = judgement;
      const faults = missing.length + extra.length + offCentre.length + oval.length + large.length;
      leave(faults > 0 ? EXIT.faults : EXIT.done);
    });
};

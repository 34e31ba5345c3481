import { library } from '#craft/draft/library/index.ts';
import { draftRecipe } from '#jobs/draft/draft.ts';
import { type FigureSet, withFigures } from '#jobs/draft/set.ts';
import { toDraftResult, toLibraryResult } from '#jobs/results/draft.ts';
import { resultText } from '#jobs/results/text.ts';
import { draftInWords, figuresInWords, libraryInWords, lostInWords } from '#jobs/words/draft.ts';
import { figuresOf } from '#pattern/recipe/walk.ts';
import { writeRecipe } from '#pattern/recipe-file/file.ts';
import { patternBytes } from '../files/pattern.ts';
import { STANDARD } from '../files/read.ts';
import { openRecipe } from '../files/recipe.ts';
import { writeStandard, writeWhole } from '../files/write.ts';
import { type AboutFlags, addAboutOptions, saidOf } from '../options/about.ts';
import { badOption } from '../options/bad-option.ts';
import { figureSet } from '../options/draft.ts';
import { needed, outputOf } from '../options/needed.ts';
import { EXIT } from '../outcome/exit.ts';
import { orRefuse } from '../outcome/refused.ts';
import { clean } from '../terminal/clean.ts';
import { say } from '../terminal/say.ts';
import type { AddVerb } from './verb.ts';

interface DraftFlags extends AboutFlags {
  readonly output?: string;
  readonly set?: readonly FigureSet[];
  readonly list?: true;
  readonly figures?: true;
  readonly recipe?: string;
  readonly json?: true;
}

/** `draft`: a pattern from nothing but its figures. */
export const addDraft: AddVerb = (pinlight, leave) => {
  const draft = pinlight
    .command('draft')
    .summary('draft a pattern from a recipe: from figures, with no paper')
    .description(
      'Drafts a pattern from a recipe: the figures that say how it is made. A recipe comes from the library (--list), ' +
        'from a file, or from a pattern that was drafted before; then what was changed by hand since is kept.',
    )
    .argument('[recipe]', 'a name of the library, a recipe file, a drafted pattern, or - for standard input')
    .option('-o, --output <file>', 'where the pattern goes')
    .option('--set <figure=value>', 'change a figure of the recipe, and again for each', figureSet)
    .option('--figures', 'say which figures the recipe has, and what each can be')
    .option('--recipe <file>', 'write the recipe itself to a file, to be edited by hand')
    .option('--list', 'say what the library holds')
    .option('--json', 'for machines, as docs/schema/draft.schema.json describes');
  addAboutOptions(draft).action(async (name: string | undefined, flags: DraftFlags) => {
    if (flags.list) {
      await writeStandard(flags.json ? resultText(toLibraryResult(library)) : libraryInWords(library));
      return leave(EXIT.done);
    }
    const given = needed(
      'The recipe',
      name,
      'a name of the library (see --list), a recipe file or a pattern',
    );
    const source = await openRecipe(given);
    const sets = flags.set ?? [];
    if (flags.figures) {
      await writeStandard(
        clean(figuresInWords(figuresOf(orRefuse(withFigures(source.recipe, sets), given)))),
      );
      return leave(EXIT.done);
    }
    if (flags.recipe === STANDARD) badOption('--recipe', STANDARD, 'the name of a file');
    const output = flags.recipe === undefined || flags.output ? outputOf(flags) : null;
    const job = orRefuse(draftRecipe(source, sets), given);
    const pattern = saidOf(job.file.pattern, flags);
    const drafted = { ...job, file: { ...job.file, pattern } };
    if (flags.recipe !== undefined) {
      await writeWhole(flags.recipe, writeRecipe({ about: pattern.about, recipe: job.recipe }), [given]);
    }
    if (output !== null) await writeWhole(output, patternBytes(drafted.file, output), [given]);
    if (flags.json) await writeStandard(resultText(toDraftResult(drafted, lostInWords)));
    for (const sentence of draftInWords(drafted)) say(sentence);
    leave(EXIT.done);
  });
};

import { done, failed, type Result } from '#base/result.ts';
import type { Anchor, Area, Mark, Pattern, Run } from '#pattern/pattern.ts';
import type { MatRecipe } from '#pattern/recipe/mat.ts';
import { Drafting } from '../drafting.ts';
import { curl } from '../ring/curl.ts';
import { draftStrip } from '../strip/strip.ts';
import type { DraftTrouble } from '../trouble.ts';
import { centreTrouble, draftCentre } from './centre.ts';
import { closeTrouble, growthTrouble, ofMat, repeatTrouble } from './limits.ts';
import { named } from './named.ts';
import { type Round, roundsOfMat } from './rounds.ts';

/** A round mat; see `#pattern/recipe/mat.ts`. */
export function draftMat(recipe: MatRecipe): Result<Pattern, DraftTrouble> {
  const rounds = roundsOfMat(recipe);
  const strips: Pattern[] = [];
  for (const round of rounds) {
    const trouble = repeatTrouble(round);
    if (trouble !== null) return failed(trouble);
    const strip = draftStrip(round.strip);
    if (!strip.ok) return failed(ofMat(recipe, round, strip.trouble));
    strips.push(strip.value);
  }
  const trouble = growthTrouble(recipe, rounds, strips) ?? centreTrouble(recipe);
  if (trouble !== null) return failed(trouble);
  const bent = rounds.map(({ bend, pins, prefix, strip: { spacing } }, k) =>
    named(curl(strips[k]!, bend, pins * spacing), prefix),
  );
  const pattern = joined(recipe, rounds, bent);
  const close = closeTrouble(recipe, pattern.pins);
  return close === null ? done(pattern) : failed(close);
}

function joined(recipe: MatRecipe, rounds: readonly Round[], bent: readonly Pattern[]): Pattern {
  const drafting = new Drafting();
  for (const round of bent) {
    for (const pin of round.pins) drafting.pin(pin.id, pin);
    for (const area of round.areas) drafting.area(area);
    for (const mark of round.marks) drafting.mark(mark);
  }
  const [inner] = edgesOf(bent[0]!);
  const outer = bent.at(-1)!;
  bent.forEach((round, k) => {
    const [inside, outside] = edgesOf(round);
    const isOpen = k === 0 && recipe.centre.kind === 'open';
    drafting.run({ ...inside!, role: isOpen ? 'footside' : k === 0 ? 'outline' : 'trail-edge' });
    if (round !== outer) drafting.run({ ...outside!, role: 'trail-edge' });
    else for (const run of round.runs.slice(1)) drafting.run(run);
  });
  recipe.rounds.forEach(({ band }, k) => {
    drafting.area(
      bandArea(`${rounds[k]!.prefix}band`, band, edgesOf(bent[k]!)[1]!, edgesOf(bent[k + 1]!)[0]!),
    );
  });
  draftCentre(drafting, recipe, inner!.pins);
  if (recipe.outer.picots) for (const mark of picots(outer)) drafting.mark(mark);
  return drafting.pattern({ sizes: { footsideSpacing: recipe.spacing } });
}

/** The inner edge of a round and, where it is plain, the outer one. */
const edgesOf = ({ runs }: Pattern): readonly [Run | undefined, Run | undefined] => [
  runs.find(({ role }) => role === 'footside'),
  runs.find(({ role }) => role === 'headside'),
];

/** A closed band has two outlines and an area one: it is cut open where the rounds begin. */
function bandArea(
  id: string,
  { stitch, tint }: MatRecipe['rounds'][number]['band'],
  inner: Run,
  outer: Run,
): Area {
  const round = (run: Run): Anchor[] => [...run.pins, run.pins[0]!].map((pin) => ({ pin }));
  return {
    id,
    outline: [...round(outer), ...round(inner).reverse()],
    stitch,
    ...(tint === undefined ? {} : { tint }),
  };
}

/** Seen along its run, which goes clockwise, the outside of a mat lies to the left. */
function picots({ runs }: Pattern): Mark[] {
  const pins = new Set(runs.filter(({ role }) => role === 'headside').flatMap((run) => run.pins));
  return [...pins].map((pin) => ({ id: `${pin}p`, kind: 'picot', at: { pin }, side: 'left' }));
}

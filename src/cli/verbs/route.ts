import { Option } from 'commander';
import { toRouteResult } from '#jobs/results/route.ts';
import { resultText } from '#jobs/results/text.ts';
import { routeByHand, routeByMachine } from '#jobs/route.ts';
import { handRouteInWords, machineRouteInWords } from '#jobs/words/route.ts';
import { openPattern } from '../files/pattern.ts';
import { STANDARD } from '../files/read.ts';
import { writeWhole } from '../files/write.ts';
import { byOf, type RouteFlags, spreadOf } from '../options/route.ts';
import { EXIT } from '../outcome/exit.ts';
import { orRefuse } from '../outcome/refused.ts';
import { clean } from '../terminal/clean.ts';
import { progressLine } from '../terminal/progress.ts';
import type { AddVerb } from './verb.ts';

/** `route`: in which order the holes are made. */
export const addRoute: AddVerb = (pinlight, leave) => {
  pinlight
    .command('route')
    .summary('say in which order the holes are made, by hand or by machine')
    .description(
      'Says in which order the holes are made. By hand, as the trade does it: outside edges and curves first, ' +
        'then the motif and its fillings, last the ground along a ruler, with as few ruler settings as cover it. ' +
        'By machine: the shortest way, or one on which the heat spreads.',
    )
    .argument('<pattern>', 'a pattern file, or - for standard input')
    .addOption(new Option('--hand', 'the order for a hand').conflicts(['machine', 'spread']))
    .option('--machine', 'the order for a machine')
    .option('--spread [mm]', 'by machine: each next hole at least so far from the last, 5 mm if not said')
    .option('-o, --output <file>', 'where the order goes', STANDARD)
    .option('--json', 'for machines, as docs/schema/route.schema.json describes')
    .action(async (name: string, flags: RouteFlags & { readonly output: string; readonly json?: true }) => {
      const by = byOf(flags);
      const spread = spreadOf(flags);
      const { pattern } = await openPattern(name);
      const line = progressLine();
      const route =
        by === 'hand' ? routeByHand(pattern, line.progress) : orRefuse(routeByMachine(pattern, spread), name);
      line.clear();
      const words = () =>
        route.by === 'hand' ? handRouteInWords(route) : machineRouteInWords(route, pattern.unit);
      const text = flags.json ? resultText(toRouteResult(pattern, route)) : clean(words());
      await writeWhole(flags.output, text, [name]);
      leave(EXIT.done);
    });
};

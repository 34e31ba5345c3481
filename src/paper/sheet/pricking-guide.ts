import { heightOf, widthOf } from '#base/geometry/box.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { PrickingOrder, PrickingPass } from '#pattern/order.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { textLine } from '../type/lettering.ts';
import { bodyBold, bodyLetters, lineStep, smallLetters } from '../type/style.ts';
import type { Typeface } from '../type/typeface.ts';
import { type Block, gap, heading, item, panel, paragraph } from './flow.ts';
import { roomOn } from './furniture.ts';
import { guideMap, passSign } from './guide-map.ts';
import { type GuideStep, guideSteps } from './guide-steps.ts';
import { readingSheets, type Unnumbered } from './reading-sheet.ts';
import type { SheetContext } from './sheet.ts';

/** In which order to prick: a small map of the passes, their counts to tick off, and the rules of the hand. */
export function guidePages(
  context: SheetContext,
  pattern: Pattern,
  order: PrickingOrder,
  paper: PaperSize,
  way: 'through' | 'film',
): Unnumbered[] {
  const { typeface } = context;
  const room = roomOn(context, paper);
  const [width, height] = [widthOf(room), heightOf(room)];
  const steps = guideSteps(order);
  const total = steps.reduce((sum, step) => sum + step.holes, 0);
  const blocks: Block[] = [
    gap(2.5),
    guideMap(typeface, pattern.pins, steps, width, height * 0.5),
    gap(3),
    heading(typeface, `${total} holes in ${steps.length} ${steps.length === 1 ? 'step' : 'steps'}`),
    ...steps.map((step, k) => stepLine(typeface, step, k + 1, width)),
    ...steps.flatMap((step) => lineCounts(typeface, step, width)),
    gap(3),
    panel(typeface, 'While you prick', handRules(way, total), width),
  ];
  return readingSheets(
    context,
    {
      kind: 'pricking-guide',
      title: 'Pricking guide',
      advice: 'this map is not to scale; the rulers are',
      paper,
    },
    blocks,
  );
}

const stepNames: Readonly<Record<PrickingPass['kind'], string>> = {
  'outside-edge': 'Outside edges',
  curve: 'Curves',
  motif: 'The motif',
  filling: 'Fillings inside the motif',
  ground: 'The ground',
};

function stepLine(typeface: Typeface, step: GuideStep, number: number, width: number): Block {
  const lines = rulerPasses(step).length;
  const along = lines ? `, ${lines} ${lines === 1 ? 'line' : 'lines'} along a ruler` : '';
  const holes = `${step.holes} ${step.holes === 1 ? 'hole' : 'holes'}`;
  const [tick] = item(typeface, { box: true }, `${stepNames[step.kind]}${along}`, width);
  const height = lineStep(bodyLetters) + 1.6;
  return {
    height,
    draw: ({ x, y }) => [
      ...passSign(step.kind, { x: x + 2.2, y: y + 2.4 }, 2),
      textLine(typeface, `${number}`, bodyBold, { at: { x: x + 6, y: y + bodyLetters.size } }),
      ...tick!.draw({ x: x + 11, y }),
      textLine(typeface, holes, bodyBold, { at: { x: x + width, y: y + bodyLetters.size }, align: 'right' }),
    ],
  };
}

const rulerPasses = ({ passes }: GuideStep): PrickingPass[] => passes.filter(({ ruler }) => ruler !== null);

/** How many holes lie on each ruler line, ten to a row. */
function lineCounts(typeface: Typeface, step: GuideStep, width: number): Block[] {
  const lines = rulerPasses(step);
  if (lines.length < 2) return [];
  const rows: Block[] = [
    gap(2),
    ...paragraph(typeface, 'Holes on each line, from line 1:', width, bodyBold),
    gap(0.8),
  ];
  const column = width / 11;
  const height = lineStep(smallLetters) + 0.7;
  for (let first = 0; first < lines.length; first += 10) {
    const row = lines.slice(first, first + 10);
    const last = first + row.length;
    rows.push({
      height,
      draw: ({ x, y }) => [
        textLine(typeface, last === first + 1 ? `${last}` : `${first + 1}\u2013${last}`, smallLetters, {
          at: { x, y: y + smallLetters.size },
        }),
        ...row.map((pass, k) =>
          textLine(
            typeface,
            `${pass.order.length}`,
            { ...smallLetters, weight: 'bold' },
            { at: { x: x + (k + 1.75) * column, y: y + smallLetters.size }, align: 'right' },
          ),
        ),
      ],
    });
  }
  return rows;
}

/** Rules of the hand: common practice, no source. */
const handRules = (way: 'through' | 'film', total: number): string[] => [
  'Hold the needle upright: a slanted one makes an oval hole, and the pin leans.',
  'The needle should be slightly thinner than the pin. Wax it every three or four holes.',
  'Work on a firm pad, keep your other hand clear of the point, and never leave the pricker lying open.',
  ...(way === 'film' ? ['Prick even under film: a pin pushed into an unpricked dot misses it.'] : []),
  `At the end hold the card up to the light: ${total} holes, and a missed one shows as a gap.`,
];

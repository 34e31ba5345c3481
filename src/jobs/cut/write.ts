import { cautions } from '#paper/cut/cautions.ts';
import type { CutDrawing, CutLayer } from '#paper/cut/drawing.ts';
import { writeDxf } from '#paper/dxf/write.ts';
import { writeGcode } from '#paper/gcode/write.ts';
import { writeCuttingSvg } from '#paper/svg/cutting.ts';
import type { About } from '#pattern/pattern.ts';
import type { CutWish } from './wish.ts';

/** A drawing as the file that was asked for, with who made the pattern and the cautions at its head. */
export function writeCutting(drawing: CutDrawing, about: About, wish: CutWish): string {
  const { preset, format } = wish;
  const comments = [...originOf(about), ...cautions];
  const holes = wish.holes ?? preset?.holes ?? 'circle';
  switch (format) {
    case 'dxf':
      return writeDxf(drawing, {
        release: wish.release ?? preset?.dxf?.release ?? 'R12',
        unit: wish.unit ?? preset?.dxf?.unit ?? 'mm',
        holes: holes === 'polyline' ? 'polyline' : 'circle',
        comments,
      });
    case 'svg':
      return writeCuttingSvg(drawing, {
        title: about.name ?? 'Lace pattern',
        comments,
        colours: { ...pureColours, ...preset?.svg?.colours },
        stroke: wish.stroke ?? preset?.svg?.stroke ?? HAIRLINE,
        holes,
      });
    case 'gcode': {
      const given = preset?.gcode ?? {};
      const mostPower = wish.mostPower ?? given.mostPower ?? 1000;
      const cut = {
        feed: wish.feed ?? given.feed ?? 300,
        power: wish.power ?? given.power ?? mostPower / 10,
      };
      return writeGcode(drawing, {
        cut,
        engrave: { feed: given.engraveFeed ?? cut.feed * 4, power: given.engravePower ?? cut.power / 2 },
        mostPower,
        arcs: wish.straight ? false : (given.arcs ?? true),
        pierce: wish.pierce ?? given.pierce ?? null,
        dwellUnit: given.dwellUnit ?? 's',
        comments,
      });
    }
  }
}

/** Whether feed and power are the program's own, which fit no machine in particular. */
export const powerIsGuessed = ({ format, feed, power, preset }: CutWish): boolean =>
  format === 'gcode' &&
  ((feed ?? preset?.gcode?.feed) === undefined || (power ?? preset?.gcode?.power) === undefined);

const HAIRLINE = 0.01;

/** One pure colour for each thing that is done, as shops ask for (red for cuts is common practice). */
const pureColours: Readonly<Record<CutLayer, string>> = {
  REF: '#ff00ff',
  ENGRAVE: '#000000',
  HOLES: '#ff0000',
  INNER: '#00ff00',
  OUTLINE: '#0000ff',
};

const originOf = ({ name, maker, source, permission }: About): string[] => [
  `Pattern: ${name ?? 'without a name'}`,
  `Maker: ${maker ?? 'not stated'}. Source: ${source ?? 'not stated'}. Permission: ${permission ?? 'not stated'}`,
];

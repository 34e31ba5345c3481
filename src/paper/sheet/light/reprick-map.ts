import { type Affine, applyAffine } from '#base/geometry/affine.ts';
import { boxOf, growBox } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { InkMark } from '../../drawing/mark.ts';
import { layOut } from '../../tile/layout.ts';
import { furniture, roomOn } from '../furniture.ts';
import { patternPages } from '../pattern-page.ts';
import type { Sheet, SheetContext } from '../sheet.ts';
import { type Fault, faultKey, faultSign } from './fault-signs.ts';

export type Side = 'front' | 'back';

/** What neighbouring sheets of the map share, mm. */
const OVERLAP = 15;
const DOT = 0.5;

/**
 * A map true to scale to prick the card again by: every pin as a pale dot, those to prick or to see to with a sign, as the
 * card is seen from its front or, left and right changed over, from its back.
 */
export function reprickMap(
  context: SheetContext,
  paper: PaperSize,
  pins: readonly Point[],
  faults: readonly Fault[],
  side: Side,
  before: number,
): Sheet[] {
  const turn = sideMap(pins, side);
  const places = pins.map((pin) => applyAffine(turn, pin));
  const shown = faults.map((fault) => seen(fault, turn, side));
  const toPrick = new Set(faults.flatMap(({ kind, at }) => (kind === 'missing' ? [keyOf(at)] : [])));
  const holes = pins.map((pin, k): InkMark => {
    const colour = toPrick.has(keyOf(pin)) ? '#000000' : '#9a9a9a';
    return { kind: 'disc', role: 'hole', at: places[k]!, diameter: DOT, colour };
  });
  const content = growBox(boxOf([...places, ...shown.map(({ at }) => at)]), 3);
  const layout = layOut(content, places, paper, OVERLAP, (size) => roomOn(context, size));
  const pages = patternPages(
    context,
    {
      kind: 'reprick-map',
      title: side === 'front' ? 'Map to prick again by' : 'Map to prick again by, seen from the back',
      advice: 'lay it on the card, hole on dot, and prick what is marked; needle upright',
      places,
      holes,
      others: shown.flatMap((fault) => faultSign(fault, SIGN)),
      key: [],
      holeReach: DOT / 2,
    },
    layout,
    before + 1,
    before + layout.tiles.length,
  );
  return pages.map((page) => {
    const { id, title } = page;
    const strip = furniture(context, {
      kind: 'reprick-map',
      id,
      title,
      advice: '',
      label: '',
      page: '',
      paper: page.paper,
    }).key;
    return { ...page, marks: [...page.marks, ...faultKey(context.typeface, faults, strip)] };
  });
}

const SIGN = 2;

const keyOf = ({ x, y }: Point): string => `${x} ${y}`;

/** Left and right change over about the middle of the pattern. */
function sideMap(pins: readonly Point[], side: Side): Affine {
  const { left, right } = boxOf(pins);
  return side === 'front'
    ? { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }
    : { a: -1, b: 0, c: 0, d: 1, e: left + right, f: 0 };
}

function seen(fault: Fault, turn: Affine, side: Side): Fault {
  return {
    ...fault,
    at: applyAffine(turn, fault.at),
    ...(fault.hole && { hole: applyAffine(turn, fault.hole) }),
    ...(fault.angle !== undefined && { angle: side === 'front' ? fault.angle : Math.PI - fault.angle }),
  };
}

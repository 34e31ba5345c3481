import { type Affine, applyAffine } from '#base/geometry/affine.ts';
import { type Box, heightOf, widthOf } from '#base/geometry/box.ts';
import { type PaperSize, turned } from '#base/units/paper.ts';
import type { Picture } from '../../drawing/mark.ts';
import { furniture, roomOn } from '../furniture.ts';
import type { Sheet, SheetContext } from '../sheet.ts';
import { type Fault, faultKey, faultSign } from './fault-signs.ts';

/**
 * The photo of the card with a sign at every fault; not true to scale. Places of `faults` are the photo's pixels (x the
 * column, y the row).
 */
export function cardPicture(
  context: SheetContext,
  paper: PaperSize,
  photo: Picture,
  faults: readonly Fault[],
  total: number,
): Sheet {
  const fits = (size: PaperSize): number => fitting(photo, roomOn(context, size));
  const lain = fits(paper) >= fits(turned(paper)) ? paper : turned(paper);
  const heading = {
    kind: 'card-picture',
    id: 'card-picture',
    title: 'The card against the light',
    advice: 'a picture to look at, not to prick from',
    label: `1 of ${total}`,
    page: 'one page',
    paper: lain,
  } as const;
  const frame = furniture(context, heading);
  const { room } = frame;
  const size = fitting(photo, room);
  const place: Affine = {
    a: size,
    b: 0,
    c: 0,
    d: size,
    e: (room.left + room.right) / 2 - ((photo.width - 1) / 2) * size,
    f: room.top + MARGIN + size / 2,
  };
  const onSheet = (fault: Fault): Fault => ({
    ...fault,
    at: applyAffine(place, fault.at),
    ...(fault.hole && { hole: applyAffine(place, fault.hole) }),
  });
  return {
    kind: heading.kind,
    id: heading.id,
    title: heading.title,
    paper: lain,
    marks: [
      { kind: 'image', role: 'picture', picture: photo, place },
      ...faults.map(onSheet).flatMap((fault) => faultSign(fault, SIGN)),
      ...frame.marks,
      ...faultKey(context.typeface, faults, frame.key),
    ],
  };
}

const MARGIN = 2;
const SIGN = 3.4;
/** Rows of the key that may stand above the strip that every sheet has for one, mm. */
const KEY = 5;

const fitting = (photo: Picture, room: Box): number =>
  Math.min(widthOf(room) / photo.width, (heightOf(room) - 2 * MARGIN - KEY) / photo.height);

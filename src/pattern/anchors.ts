import type { Point } from '#base/geometry/point.ts';
import type { Anchor, Mark } from './pattern.ts';
import type { Path } from './trouble.ts';

/** The anchors of a mark in the order in which it is drawn. */
export const anchorsOf = (mark: Mark): readonly Anchor[] => namedAnchors(mark).map(([, anchor]) => anchor);

/** Every anchor of a mark, with the way to it inside the mark. */
export function namedAnchors(mark: Mark): readonly (readonly [Path, Anchor])[] {
  switch (mark.kind) {
    case 'line':
    case 'arrow':
      return [
        [['from'], mark.from],
        [['to'], mark.to],
      ];
    case 'gimp':
    case 'plait':
      return mark.path.map((anchor, i) => [['path', i], anchor] as const);
    case 'picot':
    case 'number':
    case 'text':
      return [[['at'], mark.at]];
  }
}

/** The same mark with each of its anchors replaced. */
export function mapAnchors(mark: Mark, replace: (anchor: Anchor) => Anchor): Mark {
  switch (mark.kind) {
    case 'line':
    case 'arrow':
      return { ...mark, from: replace(mark.from), to: replace(mark.to) };
    case 'gimp':
    case 'plait':
      return { ...mark, path: mark.path.map(replace) };
    case 'picot':
    case 'number':
    case 'text':
      return { ...mark, at: replace(mark.at) };
  }
}

/**
 * Where an anchor lies: its own place, or that of its pin among `pins` (a pattern's pins by id, see `pinsById`).
 * Throws where there is no such pin, which a pattern that was read or checked cannot have.
 */
export function anchorPoint(pins: ReadonlyMap<string, Point>, anchor: Anchor): Point {
  if (!('pin' in anchor)) return anchor;
  const pin = pins.get(anchor.pin);
  if (!pin) throw new RangeError(`anchorPoint: no pin "${anchor.pin}"`);
  return { x: pin.x, y: pin.y };
}

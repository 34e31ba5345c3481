import { add, distance, length, type Point, scale, subtract, unit } from '#base/geometry/point.ts';
import type { Mark } from '#pattern/pattern.ts';
import type { Colour, InkMark, Stroke, Text } from '../drawing/mark.ts';
import { polyline, QUARTER_CIRCLE, segment, smoothCurve } from '../drawing/path.ts';
import { type Lettering, textLine } from '../type/lettering.ts';
import { LEAST_LETTER } from '../type/style.ts';
import type { LetterMeasure } from '../type/typeface.ts';
import { allPlaces, type PlaceOf } from './places.ts';

export interface MarkingStyle {
  readonly typeface: LetterMeasure;
  readonly line: number;
  readonly colour: Colour;
  readonly gimp: Colour;
  /** Lines stop this far from a hole's centre, so that its mark stays clean, mm. */
  readonly clearOfHole: number;
}

/** What one marking of the pattern looks like, in the pattern's own mm; words still want a free place. */
export interface Marking {
  readonly ink: readonly InkMark[];
  readonly words: readonly Text[];
}

/** Draws one marking; undefined where it names a pin that is not there. */
export function drawMarking(mark: Mark, placeOf: PlaceOf, style: MarkingStyle): Marking | undefined {
  switch (mark.kind) {
    case 'line': {
      const ends = allPlaces([mark.from, mark.to], placeOf);
      return ends && { ink: [clearLine(ends[0]!, ends[1]!, style)], words: [] };
    }
    case 'gimp': {
      const path = allPlaces(mark.path, placeOf);
      return path && { ink: [gimp(path, mark.closed, mark.width ?? GIMP_WIDTH, style)], words: [] };
    }
    case 'plait': {
      const path = allPlaces(mark.path, placeOf);
      return path && { ink: [plait(path, style)], words: [] };
    }
    case 'picot': {
      const at = placeOf(mark.at);
      return at && { ink: [picot(at, mark.side ?? 'left', style)], words: [] };
    }
    case 'arrow': {
      const ends = allPlaces([mark.from, mark.to], placeOf);
      return ends && arrow(ends[0]!, ends[1]!, mark.label, style);
    }
    case 'number': {
      const at = placeOf(mark.at);
      return at && { ink: [], words: [words(`${mark.value}`, at, LEAST_LETTER, style)] };
    }
    case 'text': {
      const at = placeOf(mark.at);
      return at && { ink: [], words: [words(mark.text, at, Math.max(LEAST_LETTER, mark.height), style)] };
    }
  }
}

const GIMP_WIDTH = 0.8;
const PICOT_ROOM = 0.25;
const ARROW_HEAD = 2.2;

const stroke = (path: Stroke['path'], { line, colour }: MarkingStyle, width = line): Stroke => ({
  kind: 'stroke',
  role: 'marking',
  path,
  width,
  colour,
});

/** A working line from hole to hole that leaves both holes free; a very short one keeps its middle third. */
function clearLine(from: Point, to: Point, style: MarkingStyle): Stroke {
  const span = distance(from, to);
  const back = scale(unit(subtract(to, from)), Math.min(style.clearOfHole, span / 3));
  return stroke(segment(add(from, back), subtract(to, back)), style);
}

const gimp = (path: readonly Point[], closed: boolean, width: number, style: MarkingStyle): Stroke => ({
  ...stroke(smoothCurve(path, closed), style, width),
  role: 'gimp',
  colour: style.gimp,
});

const plait = (path: readonly Point[], style: MarkingStyle): Stroke => ({
  ...stroke(smoothCurve(path), style, style.line * 1.6),
  dash: [1.6, 1],
});

/** An open loop round the pin, so that it is not taken for a hole. */
function picot({ x, y }: Point, side: 'left' | 'right', style: MarkingStyle): InkMark {
  const radius = style.clearOfHole + PICOT_ROOM;
  const out = side === 'left' ? -radius : radius;
  const handle = QUARTER_CIRCLE;
  return stroke(
    [
      { step: 'move', to: { x, y: y - radius } },
      {
        step: 'curve',
        first: { x: x + out * handle, y: y - radius },
        second: { x: x + out, y: y - radius * handle },
        to: { x: x + out, y },
      },
      {
        step: 'curve',
        first: { x: x + out, y: y + radius * handle },
        second: { x: x + out * handle, y: y + radius },
        to: { x, y: y + radius },
      },
    ],
    style,
  );
}

function arrow(from: Point, to: Point, label: string | undefined, style: MarkingStyle): Marking {
  const span = subtract(to, from);
  const along = unit(span);
  const side = { x: -along.y, y: along.x };
  const head = Math.min(ARROW_HEAD, length(span) / 2);
  const tip = subtract(to, scale(along, Math.min(style.clearOfHole, length(span) / 3)));
  const neck = subtract(tip, scale(along, head));
  return {
    ink: [
      stroke(segment(from, neck), style),
      {
        kind: 'fill',
        role: 'marking',
        path: polyline(
          [tip, add(neck, scale(side, head * 0.35)), add(neck, scale(side, -head * 0.35))],
          true,
        ),
        colour: style.colour,
      },
    ],
    words: label ? [words(label, from, LEAST_LETTER, style)] : [],
  };
}

function words(text: string, at: Point, size: number, { typeface, colour }: MarkingStyle): Text {
  const letters: Lettering = { size, weight: 'regular', colour };
  return textLine(typeface, text, letters, { at, align: 'left', role: 'marking' });
}

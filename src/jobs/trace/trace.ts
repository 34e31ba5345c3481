import type { Progress } from '#base/progress.ts';
import { done, type Result } from '#base/result.ts';
import { findGimps, type TracedGimp } from '#craft/trace/gimps.ts';
import { findHoles, type TracedHoles } from '#craft/trace/holes.ts';
import type { PinLine } from '#craft/trace/lines/line.ts';
import { findLines } from '#craft/trace/lines.ts';
import type { PatternWithPictures } from '#pattern/container/container.ts';
import type { Pattern, Pin, Scale } from '#pattern/pattern.ts';
import type { PictureIn } from '../picture/picture.ts';
import { type TraceResult, toTraceResult } from '../results/trace.ts';
import type { ScaleTrouble } from '../trouble.ts';
import { COMMAND, type Door } from '../words/door.ts';
import { traceNotesInWords } from '../words/trace.ts';
import { marksOf } from './marks.ts';
import { dotSize, patternOnPaper } from './paper.ts';
import { chooseScale, type ScaleGiven } from './scale.ts';

/** A pattern found on a picture, with that picture, its result for machines and what to know about it, in words. */
export interface Traced extends PatternWithPictures {
  readonly result: TraceResult;
  readonly notes: readonly string[];
}

/**
 * Finds the pins on a picture of a paper pattern, the working lines between them, and the gimps. Where nobody knows the
 * scale, the pattern stays in pixels and a note says so.
 */
export function tracePicture(
  picture: PictureIn,
  given: ScaleGiven | null,
  progress: Progress,
  door: Door = COMMAND,
): Result<Traced, ScaleTrouble> {
  const chosen = chooseScale(picture.scale, given);
  if (!chosen.ok) return chosen;
  const scale = chosen.value;
  const found = findHoles(picture, { ...('dpi' in scale && { dpi: scale.dpi }), progress });
  const lines = findLines(picture, found.holes);
  const gimps = findGimps(picture, found.holes);
  const pattern = patternOf(picture, scale, found, lines, gimps);
  const notes = traceNotesInWords(picture, scale, found, door);
  return done({
    pattern,
    pictures: new Map([[picture.file.name, picture.file.bytes]]),
    notes,
    result: toTraceResult(picture, found, lines, pattern, notes),
  });
}

function patternOf(
  picture: PictureIn,
  scale: Scale,
  { holes }: TracedHoles,
  lines: readonly PinLine[],
  gimps: readonly TracedGimp[],
): Pattern {
  const empty = patternOnPaper(picture, scale);
  const { unit } = empty;
  const size = dotSize(scale);
  const pins = holes.map(
    ({ column, row, diameter, confidence, doubt }, index): Pin => ({
      id: `p${index + 1}`,
      x: column * size,
      y: row * size,
      // A diameter is always in millimetres, which nobody knows here.
      ...(unit === 'mm' && { diameter: diameter * size }),
      confidence,
      ...(doubt.length > 0 && { doubt }),
    }),
  );
  return { ...empty, pins, marks: marksOf(lines, gimps, pins, size, unit) };
}

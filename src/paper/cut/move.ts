import { type Affine, applyAffine } from '#base/geometry/affine.ts';
import { type Box, boxOf, emptyBox, growBox, joinBoxes } from '#base/geometry/box.ts';
import { movePath } from '../drawing/move.ts';
import { rectangle } from '../drawing/path.ts';
import type { CutDrawing, CutLine } from './drawing.ts';
import type { Extent } from './options.ts';

/** The line where the map puts it; circles keep their size. */
export const moveLine = (line: CutLine, by: Affine): CutLine =>
  line.kind === 'circle'
    ? { ...line, at: applyAffine(by, line.at) }
    : { ...line, path: movePath(line.path, by) };

/** The drawing moved to another place of a frame of another size. */
export const placeDrawing = ({ layers }: CutDrawing, by: Affine, size: Extent): CutDrawing => ({
  ...size,
  layers: Object.fromEntries(
    Object.entries(layers).map(([layer, lines]) => [layer, lines.map((line) => moveLine(line, by))]),
  ),
});

/** The drawing with its frame among the lines for aligning, where it has such lines at all. */
export function framed(drawing: CutDrawing): CutDrawing {
  const { width, height, layers } = drawing;
  if (!layers.REF) return drawing;
  const frame: CutLine = { kind: 'path', path: rectangle({ left: 0, top: 0, right: width, bottom: height }) };
  return { ...drawing, layers: { ...layers, REF: [frame, ...layers.REF] } };
}

/** The box that holds all lines; curves count with their control points, so that no number in a file is below nought. */
export const boxOfLines = (lines: readonly CutLine[]): Box =>
  lines.map(boxOfLine).reduce(joinBoxes, emptyBox);

const boxOfLine = (line: CutLine): Box =>
  line.kind === 'circle'
    ? growBox(boxOf([line.at]), line.diameter / 2)
    : boxOf(
        line.path.flatMap((step) => {
          if (step.step === 'close') return [];
          return step.step === 'curve' ? [step.first, step.second, step.to] : [step.to];
        }),
      );

import { type CutDrawing, type CutLayer, type CutLine, cutLayers, linesIn } from '../cut/drawing.ts';
import { fixed } from '../cut/fixed.ts';
import { circleCorners } from '../cut/flatten.ts';
import { type Path, type PathStep, polyline } from '../drawing/path.ts';
import { escaped } from './escaped.ts';

export interface CuttingSvgOptions {
  readonly title: string;
  readonly comments: readonly string[];
  /** One colour for each thing that is done; shops tell cuts apart by it. */
  readonly colours: Readonly<Record<CutLayer, string>>;
  /** Width of all lines, mm; many machines cut only what is thin enough. */
  readonly stroke: number;
  readonly holes: 'circle' | 'polyline' | 'arcs';
}

/**
 * A cutting file as SVG 1.1: its size in mm, a view box in which one unit is 1 mm, no transform anywhere, nothing
 * filled. So it opens at the same size whatever dots an inch a program reckons with.
 */
export function writeCuttingSvg(drawing: CutDrawing, options: CuttingSvgOptions): string {
  const [width, height] = [fixed(drawing.width), fixed(drawing.height)];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${escaped(options.title)}</title>`,
    `<desc>${escaped(['Units: mm (millimetres).', ...options.comments].join('\n'))}</desc>`,
    ...cutLayers.flatMap((layer) => {
      const lines = linesIn(drawing, layer);
      if (lines.length === 0) return [];
      const pen = `fill="none" stroke="${options.colours[layer]}" stroke-width="${options.stroke.toFixed(3)}"`;
      return [`<g id="${layer}" ${pen}>`, ...lines.map((line) => element(line, options.holes)), '</g>'];
    }),
    '</svg>',
    '',
  ].join('\n');
}

function element(line: CutLine, holes: CuttingSvgOptions['holes']): string {
  if (line.kind === 'path') return `<path d="${pathData(line.path)}"/>`;
  const { at, diameter } = line;
  // SVG has no points, and a circle of no size is not drawn: a line of 0.1 mm, as shops ask for, stands for one.
  if (diameter === 0)
    return `<path d="M${fixed(at.x - 0.05)} ${fixed(at.y)}L${fixed(at.x + 0.05)} ${fixed(at.y)}"/>`;
  const r = fixed(diameter / 2);
  if (holes === 'circle') return `<circle cx="${fixed(at.x)}" cy="${fixed(at.y)}" r="${r}"/>`;
  if (holes === 'polyline') return `<path d="${pathData(polyline(circleCorners(at, diameter), true))}"/>`;
  const [left, right, y] = [fixed(at.x - diameter / 2), fixed(at.x + diameter / 2), fixed(at.y)];
  return `<path d="M${left} ${y}A${r} ${r} 0 1 0 ${right} ${y}A${r} ${r} 0 1 0 ${left} ${y}Z"/>`;
}

const pathData = (path: Path): string => path.map(stepData).join('');

function stepData(step: PathStep): string {
  switch (step.step) {
    case 'move':
      return `M${fixed(step.to.x)} ${fixed(step.to.y)}`;
    case 'line':
      return `L${fixed(step.to.x)} ${fixed(step.to.y)}`;
    case 'curve':
      return `C${[step.first, step.second, step.to].map(({ x, y }) => `${fixed(x)} ${fixed(y)}`).join(' ')}`;
    case 'close':
      return 'Z';
  }
}

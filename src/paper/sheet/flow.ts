import type { Box } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { InkMark } from '../drawing/mark.ts';
import { rectangle, roundedRectangle } from '../drawing/path.ts';
import { type Lettering, textLine, wrapLines } from '../type/lettering.ts';
import { accent, bodyBold, bodyLetters, headingLetters, ink, lineStep, wash } from '../type/style.ts';
import type { Typeface } from '../type/typeface.ts';

/** A piece of a sheet that is read from top to bottom: so high, and drawn wherever it comes to stand. */
export interface Block {
  readonly height: number;
  /** A heading never stands alone at the foot of a page. */
  readonly keepWithNext?: boolean;
  readonly draw: (at: Point) => InkMark[];
}

/** Fills page after page with blocks; each page is its marks. */
export function flow(blocks: readonly Block[], room: Box): InkMark[][] {
  const pages: InkMark[][] = [[]];
  let y = room.top;
  blocks.forEach((block, index) => {
    const next = blocks[index + 1];
    const needed = block.height + (block.keepWithNext && next ? next.height : 0);
    if (y + needed > room.bottom + ROUNDING && y > room.top) {
      pages.push([]);
      y = room.top;
    }
    pages.at(-1)!.push(...block.draw({ x: room.left, y }));
    y += block.height;
  });
  return pages;
}

/** Blocks that fill a page to the last bit still fit, however their heights are added up; mm. */
const ROUNDING = 1e-6;

export const gap = (height: number): Block => ({ height, draw: () => [] });

export const heading = (typeface: Typeface, text: string): Block => ({
  height: lineStep(headingLetters) + 1.6,
  keepWithNext: true,
  draw: ({ x, y }) => [textLine(typeface, text, headingLetters, { at: { x, y: y + headingLetters.size } })],
});

/** Lines of running text, each a block of its own so that long text goes on over the page. */
export function paragraph(
  typeface: Typeface,
  text: string,
  width: number,
  style: Lettering = bodyLetters,
  indent = 0,
): Block[] {
  return wrapLines(typeface, text, style, width - indent).map((line) => ({
    height: lineStep(style),
    draw: ({ x, y }) => [textLine(typeface, line, style, { at: { x: x + indent, y: y + style.size } })],
  }));
}

export type Sign = { readonly box: true } | { readonly number: string } | { readonly dot: true };

/** A paragraph behind a box to tick, a number or a dot. */
export function item(typeface: Typeface, sign: Sign, text: string, width: number): Block[] {
  const lines = paragraph(typeface, text, width, bodyLetters, ITEM_INDENT);
  const [first, ...rest] = lines;
  if (!first) return [];
  return [
    {
      height: first.height + (rest.length ? 0 : ITEM_GAP),
      draw: (at) => [...drawSign(typeface, sign, at), ...first.draw(at)],
    },
    ...rest.map((line, index) => ({
      height: line.height + (index === rest.length - 1 ? ITEM_GAP : 0),
      draw: line.draw,
    })),
  ];
}

/** Lines of text on a quiet ground, for cautions; it stays whole. */
export function panel(typeface: Typeface, title: string, lines: readonly string[], width: number): Block {
  const inner = width - 2 * PANEL_PADDING;
  const content = [
    ...paragraph(typeface, title, inner, bodyBold),
    gap(1),
    ...lines.flatMap((line) => item(typeface, { dot: true }, line, inner)),
  ];
  const height = content.reduce((sum, block) => sum + block.height, 0) + 2 * PANEL_PADDING - 1;
  return {
    height,
    draw: (at) => {
      const box = { left: at.x, top: at.y, right: at.x + width, bottom: at.y + height };
      let y = at.y + PANEL_PADDING - 0.6;
      const marks: InkMark[] = [
        { kind: 'fill', role: 'note', path: roundedRectangle(box, 2), colour: wash },
        {
          kind: 'fill',
          role: 'note',
          path: rectangle({ ...box, top: box.top + 2, bottom: box.bottom - 2, right: box.left + 0.9 }),
          colour: accent,
        },
      ];
      for (const block of content) {
        marks.push(...block.draw({ x: at.x + PANEL_PADDING, y }));
        y += block.height;
      }
      return marks;
    },
  };
}

const ITEM_INDENT = 7;
const ITEM_GAP = 1.3;
const PANEL_PADDING = 4;

function drawSign(typeface: Typeface, sign: Sign, { x, y }: Point): InkMark[] {
  if ('number' in sign) {
    return [textLine(typeface, sign.number, bodyBold, { at: { x: x + 0.4, y: y + bodyLetters.size } })];
  }
  if ('dot' in sign) {
    return [
      {
        kind: 'disc',
        role: 'note',
        at: { x: x + 2.4, y: y + bodyLetters.size * 0.68 },
        diameter: 1.1,
        colour: accent,
      },
    ];
  }
  const box = { left: x + 0.4, top: y + 0.55, right: x + 3.8, bottom: y + 3.95 };
  return [{ kind: 'stroke', role: 'note', path: roundedRectangle(box, 0.5), width: 0.2, colour: ink }];
}

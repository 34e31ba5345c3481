import type { Box } from '#base/geometry/box.ts';
import type { Overlay, SheetTool } from '../../sheet/tool.ts';

export interface Sizes {
  readonly now: Box;
  readonly then: Box;
}

/** Frames round the pattern as it is, dashed, and as it would be, whole. */
export class SizeTool implements SheetTool {
  #sizes: Sizes | null = null;

  show(sizes: Sizes | null): void {
    this.#sizes = sizes;
  }

  draw(overlay: Overlay): void {
    if (!this.#sizes) return;
    frame(overlay, this.#sizes.now, 'now', '#7a4b00', [6, 4]);
    frame(overlay, this.#sizes.then, 'then', '#1c5d5a', []);
  }
}

function frame({ context, place }: Overlay, box: Box, words: string, colour: string, dash: number[]): void {
  const { left, top } = place({ x: box.left, y: box.top });
  const { left: right, top: bottom } = place({ x: box.right, y: box.bottom });
  context.lineWidth = 2;
  context.strokeStyle = colour;
  context.setLineDash(dash);
  context.strokeRect(left, top, right - left, bottom - top);
  context.setLineDash([]);
  context.font = '600 16px system-ui, sans-serif';
  const wide = context.measureText(words).width + 8;
  context.fillStyle = '#ffffff';
  context.fillRect(right - wide, bottom - 22, wide, 22);
  context.fillStyle = colour;
  context.fillText(words, right - wide + 4, bottom - 6);
}

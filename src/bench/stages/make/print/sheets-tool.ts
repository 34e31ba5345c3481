import type { Box } from '#base/geometry/box.ts';
import type { PrintPlan } from '#jobs/print/plan.ts';
import type { Overlay, SheetTool } from '../../../sheet/tool.ts';

const COLOUR = '#1c5d5a';

/** Draws what each sheet will show of the pattern, with its name; where sheets overlap both edges are seen. */
export class SheetsTool implements SheetTool {
  #plan: PrintPlan | null = null;

  update(plan: PrintPlan): void {
    this.#plan = plan;
  }

  draw(overlay: Overlay): void {
    const sheets = this.#plan?.sheets ?? [];
    for (const { window, holes } of sheets) outline(overlay, window, holes === 0);
    for (const { name, window, holes } of sheets.length > 1 ? sheets : []) {
      title(overlay, window, holes === 0 ? `${name}: blank, skip` : name);
    }
  }
}

function outline({ context, place }: Overlay, box: Box, blank: boolean): void {
  const from = place({ x: box.left, y: box.top });
  const to = place({ x: box.right, y: box.bottom });
  context.lineWidth = 2;
  context.strokeStyle = COLOUR;
  context.setLineDash(blank ? [3, 6] : [12, 5]);
  context.strokeRect(from.left, from.top, to.left - from.left, to.top - from.top);
  context.setLineDash([]);
}

/** The name in the sheet's upper left corner, on white so that it is read over dots. */
function title({ context, place }: Overlay, box: Box, words: string): void {
  const { left, top } = place({ x: box.left, y: box.top });
  context.font = '600 18px "Source Sans 3", system-ui, sans-serif';
  context.textAlign = 'left';
  context.textBaseline = 'middle';
  context.fillStyle = 'rgb(255 255 255 / 85%)';
  context.fillRect(left + 4, top + 4, context.measureText(words).width + 12, 28);
  context.fillStyle = COLOUR;
  context.fillText(words, left + 10, top + 18);
}

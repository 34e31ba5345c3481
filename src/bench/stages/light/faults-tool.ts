import { PointIndex } from '#base/geometry/point-index.ts';
import { drawOnCanvas } from '#paper/canvas/draw.ts';
import type { InkMark } from '#paper/drawing/mark.ts';
import { segment } from '#paper/drawing/path.ts';
import { faultSign } from '#paper/sheet/light/fault-signs.ts';
import { SHEET_LETTERS } from '../../sheet/screen-letters.ts';
import type { Overlay, SheetTool, SheetTouch } from '../../sheet/tool.ts';
import { type KeptFault, signOf } from './kept-check.ts';

export interface FaultsToolState {
  readonly faults: readonly KeptFault[];
  readonly chosen: number | null;
}

/** Signs about so wide on the screen, CSS pixels, and never smaller than they are printed, mm. */
const ON_SCREEN = 26;
const PRINTED = 2;
/** White about them, CSS pixels. */
const HALO = 4;

/** Draws the signs of the printed map over the sheet, whatever lies under them; a touch chooses one. */
export class FaultsTool implements SheetTool {
  readonly #choose: (fault: number) => void;
  #state: FaultsToolState = { faults: [], chosen: null };

  constructor(choose: (fault: number) => void) {
    this.#choose = choose;
  }

  update(state: FaultsToolState): void {
    this.#state = state;
  }

  tap({ at, reach }: SheetTouch): void {
    const index = new PointIndex(this.#state.faults.map((fault) => fault.at)).nearest(at, reach);
    if (index !== null) this.#choose(index);
  }

  draw({ context, camera, place }: Overlay): void {
    const { faults, chosen } = this.#state;
    const size = Math.max(PRINTED, ON_SCREEN / camera.scale);
    const origin = place({ x: 0, y: 0 });
    context.save();
    context.transform(camera.scale, 0, 0, camera.scale, origin.left, origin.top);
    const options = { leastLine: 2 / camera.scale, fontFamily: SHEET_LETTERS };
    const marks = faults.flatMap((fault) =>
      fault.mended ? mendedSign(fault, size) : faultSign(signOf(fault), size),
    );
    const halo = marks.map((mark) => whiteAbout(mark, HALO / camera.scale));
    drawOnCanvas(halo, context, { ...options, leastLine: (2 + HALO) / camera.scale });
    drawOnCanvas(marks, context, options);
    const here = chosen === null ? undefined : faults[chosen];
    if (here) drawOnCanvas(chosenSign(here, size), context, { ...options, leastLine: 3 / camera.scale });
    context.restore();
  }
}

/** White about a sign, wider by so much, so that it stands out on a dark photo too. */
function whiteAbout(mark: InkMark, more: number): InkMark {
  const white = { ...mark, colour: '#ffffff' } as InkMark;
  if (white.kind === 'disc') return { ...white, diameter: white.diameter + more };
  if (white.kind === 'ring') return { ...white, diameter: white.diameter + more, width: white.width + more };
  return 'width' in white ? { ...white, width: white.width + more } : white;
}

const MENDED = '#23642f';

/** A tick. */
function mendedSign({ at: { x, y } }: KeptFault, size: number): InkMark[] {
  const corner = { x: x - 0.08 * size, y: y + 0.28 * size };
  const tick = (from: { x: number; y: number }): InkMark => ({
    kind: 'stroke',
    role: 'note',
    path: segment(from, corner),
    width: 0.12 * size,
    colour: MENDED,
  });
  return [tick({ x: x - 0.38 * size, y: y - 0.02 * size }), tick({ x: x + 0.42 * size, y: y - 0.38 * size })];
}

const chosenSign = ({ at }: KeptFault, size: number): InkMark[] => [
  { kind: 'ring', role: 'note', at, diameter: 2.1 * size, width: 0.1 * size, colour: '#1c5d5a' },
];

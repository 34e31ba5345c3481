import { between, type Point } from '#base/geometry/point.ts';
import type { Text } from '../drawing/mark.ts';
import { textStart } from '../drawing/outline.ts';
import type { PathStep } from '../drawing/path.ts';
import type { Typeface } from './typeface.ts';

/** The edges of a text's letters as one path, where the text stands. */
export function letterPath(text: Text, typeface: Typeface): PathStep[] {
  const start = textStart(text);
  const [cos, sin] = [Math.cos(text.turn), Math.sin(text.turn)];
  const steps: PathStep[] = [];
  let along = 0;
  for (const run of typeface.runs(text.text, text.weight)) {
    const scale = text.size / typeface.unitsPerEm(run.face);
    let pen = along * text.size;
    const { glyphs, positions } = typeface.glyphs(run);
    glyphs.forEach((glyph, k) => {
      const { xOffset, yOffset, xAdvance } = positions[k]!;
      const at = (x: number, y: number): Point => {
        const right = pen + (x + xOffset) * scale;
        const down = -(y + yOffset) * scale;
        return { x: start.x + right * cos - down * sin, y: start.y + right * sin + down * cos };
      };
      let last: Point = start;
      for (const { command, args } of glyph.path.commands) {
        const places = Array.from({ length: args.length / 2 }, (_, n) => at(args[2 * n]!, args[2 * n + 1]!));
        steps.push(letterStep(command, last, places));
        last = places.at(-1) ?? last;
      }
      pen += xAdvance * scale;
    });
    along += run.width;
  }
  return steps;
}

type Command = 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';

function letterStep(command: Command, from: Point, places: readonly Point[]): PathStep {
  switch (command) {
    case 'moveTo':
      return { step: 'move', to: places[0]! };
    case 'lineTo':
      return { step: 'line', to: places[0]! };
    case 'quadraticCurveTo': {
      // The same curve with a cubic's handles: two thirds of the way to the one handle that it had.
      const [handle, to] = [places[0]!, places[1]!];
      return { step: 'curve', first: between(from, handle, 2 / 3), second: between(to, handle, 2 / 3), to };
    }
    case 'bezierCurveTo':
      return { step: 'curve', first: places[0]!, second: places[1]!, to: places[2]! };
    case 'closePath':
      return { step: 'close' };
  }
}

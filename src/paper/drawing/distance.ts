import { cubicPoint } from '#base/geometry/curve.ts';
import type { Point } from '#base/geometry/point.ts';
import { isInside } from '#base/geometry/polygon.ts';
import { distanceToStep } from '#base/geometry/segment.ts';
import type { InkMark } from './mark.ts';
import { lineWidth, type OutlineContext, outline } from './outline.ts';

/** How far a place lies from the ink of a mark: nought on it, and inside what is filled or framed. */
export function distanceToInk(mark: InkMark, place: Point): number {
  const courses = coursesOf(mark);
  const isFilled =
    mark.kind === 'disc' || mark.kind === 'fill' || mark.kind === 'text' || mark.kind === 'image';
  if (isFilled && courses.filter((course) => isInside(course, place)).length % 2 === 1) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const course of courses) {
    for (let at = 1; at < course.length; at++) {
      least = Math.min(least, distanceToStep(place, course[at - 1]!, course[at]!));
    }
  }
  return Math.max(0, least - lineWidth(mark) / 2);
}

/** Where a mark runs, as straight steps close enough to its curves for aiming at. */
export function coursesOf(mark: InkMark): Point[][] {
  const context = new CourseContext();
  outline(mark, context);
  return context.courses;
}

const STEPS = 16;

class CourseContext implements OutlineContext {
  readonly courses: Point[][] = [];

  move(x: number, y: number): void {
    this.courses.push([{ x, y }]);
  }

  line(x: number, y: number): void {
    this.courses.at(-1)?.push({ x, y });
  }

  curve(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    const from = this.courses.at(-1)?.at(-1);
    if (!from) return;
    const cubic = [from, { x: x1, y: y1 }, { x: x2, y: y2 }, { x, y }] as const;
    for (let step = 1; step <= STEPS; step++) {
      const { x: atX, y: atY } = cubicPoint(cubic, step / STEPS);
      this.line(atX, atY);
    }
  }

  circle(x: number, y: number, radius: number): void {
    const corners = Array.from({ length: 4 * STEPS + 1 }, (_, step) => {
      const turn = (step * Math.PI) / (2 * STEPS);
      return { x: x + radius * Math.cos(turn), y: y + radius * Math.sin(turn) };
    });
    this.courses.push(corners);
  }

  close(): void {
    const [first] = this.courses.at(-1) ?? [];
    if (first) this.line(first.x, first.y);
  }
}

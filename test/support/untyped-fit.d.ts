declare module 'perspective-transform' {
  export default function perspectiveTransform(
    from: readonly number[],
    onto: readonly number[],
  ): { transform(x: number, y: number): number[] };
}

declare module 'bezier-js' {
  export class Bezier {
    constructor(...coordinates: number[]);
    length(): number;
    split(from: number, to: number): Bezier;
    derivative(t: number): { x: number; y: number };
    normal(t: number): { x: number; y: number };
    curvature(t: number): { k: number };
  }
}

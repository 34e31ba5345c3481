import type { Point } from '#base/geometry/point.ts';
import type { CutLayer, CutLine } from '../cut/drawing.ts';
import { type Chain, circleCorners, flatten } from '../cut/flatten.ts';
import type { Tags } from './tags.ts';

interface EntityOptions {
  /** y runs up in DXF: what lies `height` down lies at 0. */
  readonly height: number;
  readonly scale: number;
  readonly digits: number;
  /** The handle of the space that the entities lie in, from R2000 on; null before. */
  readonly owner: string | null;
  readonly holes: 'circle' | 'polyline';
}

/** Writes lines as POINT, CIRCLE, LINE and (LW)POLYLINE, the entities that every reader knows. */
export class Entities {
  readonly #tags: Tags;
  readonly #options: EntityOptions;
  #handle = FIRST_HANDLE;

  constructor(tags: Tags, options: EntityOptions) {
    this.#tags = tags;
    this.#options = options;
  }

  add(layer: CutLayer, line: CutLine): void {
    if (line.kind === 'path') for (const chain of flatten(line.path)) this.#chain(layer, chain);
    else if (line.diameter === 0) {
      this.#begin('POINT', layer, 'AcDbPoint');
      this.#place(line.at);
    } else if (this.#options.holes === 'polyline') {
      this.#chain(layer, { points: circleCorners(line.at, line.diameter), closed: true });
    } else {
      this.#begin('CIRCLE', layer, 'AcDbCircle');
      this.#place(line.at);
      this.#length(40, line.diameter / 2);
    }
  }

  #chain(layer: CutLayer, { points, closed }: Chain): void {
    if (points.length === 2 && !closed) {
      this.#begin('LINE', layer, 'AcDbLine');
      this.#place(points[0]!);
      this.#place(points[1]!, 1);
    } else if (this.#options.owner === null) this.#polyline(layer, points, closed);
    else {
      this.#begin('LWPOLYLINE', layer, 'AcDbPolyline');
      this.#tags.add(90, points.length).add(70, closed ? 1 : 0);
      for (const point of points) this.#flat(point);
    }
  }

  #polyline(layer: CutLayer, points: readonly Point[], closed: boolean): void {
    this.#begin('POLYLINE', layer, '');
    this.#tags.add(66, 1).add(70, closed ? 1 : 0);
    this.#place({ x: 0, y: this.#options.height });
    for (const point of points) {
      this.#begin('VERTEX', layer, '');
      this.#place(point);
    }
    this.#begin('SEQEND', layer, '');
  }

  #begin(type: string, layer: CutLayer, subclass: string): void {
    const { owner } = this.#options;
    this.#tags.add(0, type);
    if (owner !== null) {
      this.#tags
        .add(5, (this.#handle++).toString(16).toUpperCase())
        .add(330, owner)
        .add(100, 'AcDbEntity');
    }
    this.#tags.add(8, layer);
    if (owner !== null) this.#tags.add(100, subclass);
  }

  /** A place as groups 10, 20, 30, or 11, 21, 31 for a second one. */
  #place(point: Point, second = 0): void {
    this.#flat(point, second);
    this.#length(30 + second, 0);
  }

  #flat({ x, y }: Point, second = 0): void {
    this.#length(10 + second, x);
    this.#length(20 + second, this.#options.height - y);
  }

  #length(code: number, value: number): void {
    this.#tags.real(code, value * this.#options.scale, this.#options.digits);
  }
}

/** Handles below are those of tables, blocks and dictionaries. */
const FIRST_HANDLE = 0x100;

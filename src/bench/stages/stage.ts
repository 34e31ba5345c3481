import type { ComponentType } from 'react';

/** A stage of the work: its place in the order, its words, and its panel, which loads when it is first opened. */
export interface Stage {
  readonly id: StageId;
  readonly title: string;
  readonly load: () => Promise<{ readonly Panel: ComponentType }>;
}

export type StageId =
  | 'paper'
  | 'pins'
  | 'straighten'
  | 'mark'
  | 'size'
  | 'draft'
  | 'look'
  | 'make'
  | 'prick'
  | 'light';

import type { GroundName } from '#pattern/recipe/ground.ts';
import { doubled } from './doubled.ts';
import { fourPin } from './four-pin.ts';
import type { Ground } from './ground.ts';
import { honeycomb } from './honeycomb.ts';
import { plain } from './plain.ts';
import { rose } from './rose.ts';

export { fillGround, type GroundField } from './fill.ts';
export type { Ground } from './ground.ts';

const grounds: Readonly<Record<GroundName, Ground>> = {
  plain,
  doubled,
  'four-pin': fourPin,
  honeycomb,
  rose,
};

export const groundNamed = (name: GroundName): Ground => grounds[name];

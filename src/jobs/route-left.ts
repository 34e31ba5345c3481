import { type HandEffort, handEffort } from '#craft/route/effort.ts';
import type { HandRoute } from './route.ts';

/** What lies ahead once some holes are made; `done` are pins by index. */
export const effortLeft = ({ order, pace }: HandRoute, done: ReadonlySet<number>): HandEffort =>
  handEffort(
    {
      passes: order.passes
        .map((pass) => ({ ...pass, order: pass.order.filter((pin) => !done.has(pin)) }))
        .filter((pass) => pass.order.length > 0),
    },
    pace,
  );

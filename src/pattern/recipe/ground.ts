import { z } from 'zod';

/** The grounds and fillings that a lattice can be filled with; `craft/draft/grounds` says where their pins stand. */
export const groundName = z.enum(['plain', 'doubled', 'four-pin', 'honeycomb', 'rose']);

export type GroundName = z.output<typeof groundName>;

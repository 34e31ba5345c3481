import type { PrickingOrder, PrickingPass } from '#pattern/order.ts';

/** Passes of one kind that follow each other, told as one step. */
export interface GuideStep {
  readonly kind: PrickingPass['kind'];
  readonly passes: readonly PrickingPass[];
  readonly holes: number;
}

/** Joins passes of one kind where they follow each other. */
export function guideSteps({ passes }: PrickingOrder): GuideStep[] {
  const steps: { kind: PrickingPass['kind']; passes: PrickingPass[]; holes: number }[] = [];
  for (const pass of passes) {
    if (pass.order.length === 0) continue;
    let step = steps.at(-1);
    if (step?.kind !== pass.kind) {
      step = { kind: pass.kind, passes: [], holes: 0 };
      steps.push(step);
    }
    step.passes.push(pass);
    step.holes += pass.order.length;
  }
  return steps;
}

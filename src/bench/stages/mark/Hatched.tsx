import { useId } from 'react';
import type { Stitch } from '#pattern/pattern.ts';
import { HATCH_SIDE, hatches } from './hatch.ts';

/** A patch of a tint with the lines by which its stitch is told on the sheet. */
export function Hatched({
  stitch = 'other',
  colour = '#ffffff',
}: {
  readonly stitch: Stitch | undefined;
  readonly colour: string | undefined;
}) {
  const id = useId();
  return (
    <svg className="hatched" aria-hidden="true">
      <pattern id={id} width={HATCH_SIDE} height={HATCH_SIDE} patternUnits="userSpaceOnUse">
        <rect width={HATCH_SIDE} height={HATCH_SIDE} fill={colour} />
        {hatches[stitch].map(([x, y, toX, toY]) => (
          <line
            key={`${x} ${y} ${toX} ${toY}`}
            x1={x * HATCH_SIDE}
            y1={y * HATCH_SIDE}
            x2={toX * HATCH_SIDE}
            y2={toY * HATCH_SIDE}
            stroke="#20242c"
            strokeOpacity="0.45"
          />
        ))}
      </pattern>
      <rect width="100%" height="100%" fill={`url(#${id})`} />
    </svg>
  );
}

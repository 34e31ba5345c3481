import { distance } from '#base/geometry/point.ts';
import type { Anchor, Mark } from '#pattern/pattern.ts';
import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';
import { capital, sayLength, sayPlace } from '../say.ts';
import type { Survey } from '../survey.ts';

/** A mark that should end at a pin and does not. Gimp, arrows, numbers and words may stand where they like. */
export const looseMark: Rule = {
  id: 'loose-mark',
  title: 'A mark that ends at no pin',
  look: (survey) =>
    survey.pattern.marks.flatMap((mark) => endsOf(mark).flatMap((end) => looseEnd(mark.kind, end, survey))),
};

function endsOf(mark: Mark): readonly Anchor[] {
  switch (mark.kind) {
    case 'line':
      return [mark.from, mark.to];
    case 'plait':
      return [...new Set([mark.path[0], mark.path.at(-1)])].filter((end) => end !== undefined);
    case 'picot':
      return [mark.at];
    case 'gimp':
    case 'arrow':
    case 'number':
    case 'text':
      return [];
  }
}

function looseEnd(
  kind: Mark['kind'],
  end: Anchor,
  { pattern, options, spacing, nearest }: Survey,
): Finding[] {
  const what = capital(`a ${kind}`);
  if ('pin' in end) return [];
  const place = sayPlace(end, pattern.unit);
  const reach = options.markReach * spacing;
  const meant = nearest(end, reach);
  const at = { x: end.x, y: end.y };
  if (meant === null)
    return [
      {
        rule: 'loose-mark',
        severity: 'warning',
        at,
        pins: [],
        allowed: { value: reach, unit: pattern.unit },
        sentence: `${what} ends at ${place}, where no pin stands. Put the missing pin in, or take the mark back to a pin.`,
      },
    ];
  const off = distance(end, pattern.pins[meant]!);
  return [
    {
      rule: 'loose-mark',
      severity: 'note',
      at,
      pins: [meant],
      measured: { value: off, unit: pattern.unit },
      allowed: { value: 0, unit: pattern.unit },
      sentence: `${what} ends at ${place}, ${sayLength(off, pattern.unit)} from pin ${meant + 1}, and probably means it. Join it to the pin, so that it moves with it.`,
    },
  ];
}

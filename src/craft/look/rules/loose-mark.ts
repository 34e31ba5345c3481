import { distance, type Point } from '#base/geometry/point.ts';
import type { Anchor, Mark } from '#pattern/pattern.ts';
import type { Finding } from '../finding.ts';
import { groupsWithin } from '../groups.ts';
import type { Rule } from '../rule.ts';
import { capital, count, sayLength, sayPlace } from '../say.ts';
import type { Survey } from '../survey.ts';

/** Marks that should end at a pin and do not: one finding a place, since several lines mostly lack the same pin. */
export const looseMark: Rule = {
  id: 'loose-mark',
  title: 'A mark that ends at no pin',
  look: (survey) => {
    const { pattern, options, spacing } = survey;
    const ends = pattern.marks.flatMap((mark) =>
      endsOf(mark).flatMap((end) => ('pin' in end ? [] : [{ kind: mark.kind, place: end }])),
    );
    const reach = options.markReach * spacing;
    const places = groupsWithin(
      ends.map(({ place }) => place),
      reach / 2,
    );
    return places.map((members) =>
      looseEnds(
        members.map((at) => ends[at]!),
        reach,
        survey,
      ),
    );
  },
};

interface LooseEnd {
  readonly kind: Mark['kind'];
  readonly place: Point;
}

/** Gimp, arrows, numbers and words may stand where they like. */
function endsOf(mark: Mark): readonly Anchor[] {
  switch (mark.kind) {
    case 'line':
      return [mark.from, mark.to];
    case 'plait':
      return [mark.path[0], mark.path.at(-1)].filter((end) => end !== undefined);
    case 'picot':
      return [mark.at];
    case 'gimp':
    case 'arrow':
    case 'number':
    case 'text':
      return [];
  }
}

function looseEnds(ends: readonly LooseEnd[], reach: number, { pattern, nearest }: Survey): Finding {
  const { kind, place } = ends[0]!;
  const several = ends.length > 1;
  const what = several ? count(ends.length, 'mark') : capital(`a ${kind}`);
  const at = { x: place.x, y: place.y };
  const where = `${what} ${several ? 'end' : 'ends'} at ${sayPlace(at, pattern.unit)}`;
  const meant = nearest(place, reach);
  if (meant === null)
    return {
      rule: 'loose-mark',
      severity: 'warning',
      at,
      pins: [],
      allowed: { value: reach, unit: pattern.unit },
      sentence: several
        ? `${where}, where no pin stands. Most likely a pin is missing: put it in.`
        : `${where}, where no pin stands. Put the missing pin in, or take the mark back to a pin.`,
    };
  const off = distance(place, pattern.pins[meant]!);
  const it = several ? 'them' : 'it';
  return {
    rule: 'loose-mark',
    severity: 'note',
    at,
    pins: [meant],
    measured: { value: off, unit: pattern.unit },
    allowed: { value: 0, unit: pattern.unit },
    sentence: `${where}, ${sayLength(off, pattern.unit)} from pin ${meant + 1}, and probably ${several ? 'mean' : 'means'} it. Join ${it} to the pin, so that ${several ? 'they move' : 'it moves'} with it.`,
  };
}

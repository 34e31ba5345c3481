import { doubtInWords } from '#pattern/doubt-words.ts';
import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';
import { sayPlace } from '../say.ts';

/** A doubtful dot that stands just where the pins round it call for one is most likely a pin, and only worth a note. */
export const doubtfulPin: Rule = {
  id: 'doubtful-pin',
  title: 'A pin that the finder was not sure of',
  look: ({ pattern, regularity, options }) => {
    const kindOf = new Map(regularity.structures.map(({ id, kind }) => [id, kind]));
    return pattern.pins.flatMap(({ x, y, confidence, doubt }, index): Finding[] => {
      if (confidence === undefined || confidence >= options.surePin) return [];
      const why = doubt?.map((code) => doubtInWords[code]).join(', ');
      const inDoubt = `Pin ${index + 1}, at ${sayPlace({ x, y }, pattern.unit)}, is in doubt${why ? `: it ${why}` : ''}`;
      const structure = regularity.structureOf[index] ?? null;
      const called = structure !== null;
      const calledBy = called && kindOf.get(structure) === 'run' ? 'line or curve' : 'ground';
      return [
        {
          rule: 'doubtful-pin',
          severity: called ? 'note' : 'warning',
          at: { x, y },
          pins: [index],
          measured: { value: confidence, unit: 'share' },
          allowed: { value: options.surePin, unit: 'share' },
          sentence: called
            ? `${inDoubt}. The ${calledBy} round it calls for a pin there, so that it most likely is one; compare with the paper.`
            : `${inDoubt}. Compare with the paper; keep it or take it out.`,
        },
      ];
    });
  },
};

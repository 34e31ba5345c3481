import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';

export const noProvenance: Rule = {
  id: 'no-provenance',
  title: 'No maker or permission stated',
  look: ({ pattern: { about } }) => [
    ...(about.maker?.trim()
      ? []
      : said('The pattern does not say who made it. Write the maker in, or “unknown” if nobody knows.')),
    ...(about.permission?.trim()
      ? []
      : said(
          'The pattern does not say what may be done with it. A pattern belongs to its designer: write in what you are allowed, for example “for my own use”.',
        )),
  ],
};

const said = (sentence: string): Finding[] => [
  { rule: 'no-provenance', severity: 'note', at: null, pins: [], sentence },
];

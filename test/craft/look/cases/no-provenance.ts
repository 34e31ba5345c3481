import { inspection, type RuleCase } from '../inspections.ts';

const about = (maker?: string, permission?: string) =>
  inspection({
    about: { ...(maker !== undefined && { maker }), ...(permission !== undefined && { permission }) },
  });

export const cases: RuleCase[] = [
  {
    name: 'no maker',
    fires: about(undefined, 'for my own use'),
    nearMiss: about('unknown', 'none asked'),
    mended: about('unknown', 'for my own use'),
  },
  {
    name: 'no permission',
    fires: about('an aunt'),
    nearMiss: about('an aunt', 'hers'),
    mended: about('an aunt', 'hers'),
  },
  {
    name: 'neither',
    fires: about(),
    findings: 2,
    nearMiss: about('an aunt', 'hers'),
    mended: about('an aunt'),
  },
];

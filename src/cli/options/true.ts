import { readGroundAngle } from '#jobs/true/angle.ts';
import { badOption } from './bad-option.ts';
import { lengthIn } from './length.ts';

/** `--angle 52,5`: degrees between 0 and 90. */
export function angle(text: string): number {
  const degrees = readGroundAngle(text);
  if (degrees === null) {
    badOption(
      '--angle',
      text,
      'the degrees between ground and footside, more than 0 and less than 90, such as 45',
    );
  }
  return degrees;
}

/** `--known p3,p17=120`: two pins, and their true distance in mm. */
export function known(text: string): { from: string; to: string; length: number } {
  const found = /^\s*([^,=\s]+)\s*,\s*([^,=\s]+)\s*=(.+)$/.exec(text);
  const length = lengthIn(found?.[3] ?? '');
  if (found === null || length === null) {
    badOption('--known', text, 'two pins and their true distance, such as p3,p17=120 or p3,p17=4in');
  }
  return { from: found[1]!, to: found[2]!, length };
}

/** `--leave lattice-1,run-3`: names with commas between, and the option may come again. */
export const list = (text: string, before: readonly string[] = []): string[] => [
  ...before,
  ...text.split(',').flatMap((name) => (name.trim() === '' ? [] : [name.trim()])),
];

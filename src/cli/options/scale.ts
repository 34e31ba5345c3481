import type { Command } from 'commander';
import type { ScaleGiven } from '#jobs/trace/scale.ts';
import { Refused } from '../outcome/refused.ts';
import { badOption } from './bad-option.ts';
import { lengthIn } from './length.ts';

/** The flags that set the scale of a picture. */
export interface ScaleFlags {
  readonly dpi?: number;
  readonly span?: ScaleGiven;
}

export const addScaleOptions = (command: Command): Command =>
  command
    .option(
      '--dpi <number>',
      'the dots an inch at which it was scanned, where the file does not say it rightly',
      dpi,
    )
    .option(
      '--span <x1,y1,x2,y2=mm>',
      'two places in the picture, in dots, and the distance you measured between them',
      span,
    );

/** `--dpi 300`: dots an inch. */
export function dpi(text: string): number {
  const number = /^\d+([.,]\d+)?$/.test(text.trim()) ? Number.parseFloat(text.replace(',', '.')) : Number.NaN;
  if (!(number > 0)) badOption('--dpi', text, 'the dots an inch at which it was scanned, such as 300');
  return number;
}

/** `--span 120,80,2010,95=160`: two places in the picture, in dots from its top left, and their true distance. */
function span(text: string): ScaleGiven {
  const [places = '', size = ''] = text.split(/=(.*)/s);
  const numbers = places.split(/[,;\s]+/).filter((part) => part !== '');
  const [x1, y1, x2, y2] = numbers.map((part) => (/^-?\d+(\.\d+)?$/.test(part) ? Number(part) : Number.NaN));
  const length = lengthIn(size);
  const whole = numbers.length === 4 && [x1, y1, x2, y2].every(Number.isFinite);
  if (!whole || length === null) {
    badOption(
      '--span',
      text,
      'two places in the picture and their true distance, such as 120,80,2010,95=160 (in mm) or …=6in',
    );
  }
  return { kind: 'span', from: { column: x1!, row: y1! }, to: { column: x2!, row: y2! }, length };
}

/** The scale that was given, if any; not two of them. */
export function scaleGiven({ dpi, span }: ScaleFlags): ScaleGiven | null {
  if (dpi !== undefined && span !== undefined) throw new Refused({ kind: 'two-scales' }, null);
  return dpi === undefined ? (span ?? null) : { kind: 'dpi', dpi };
}

import { badOption } from './bad-option.ts';

/** `--sure 0.5`: a confidence from 0 to 1. */
export function sure(text: string): number {
  const share = /^\d*[.,]?\d+$/.test(text.trim()) ? Number(text.replace(',', '.')) : Number.NaN;
  if (!(share >= 0 && share <= 1))
    badOption('--sure', text, 'a share from 0 (leave nothing out) to 1, such as 0.5');
  return share;
}

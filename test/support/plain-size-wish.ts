import { usualCopier } from '#craft/size/copier.ts';
import type { SizeWish } from '#jobs/size/wish.ts';

/** A wish for nothing in particular; a test adds what it wishes. */
export const plainSizeWish: SizeWish = {
  threads: [],
  lace: 'torchon',
  wraps: 12,
  spacing: null,
  repeat: null,
  target: null,
  thickness: false,
  copier: usualCopier,
  pin: null,
};

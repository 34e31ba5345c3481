import type { GreyPicture } from './grey.ts';

/** The picture with light and dark changed over. */
export function inverted({ width, height, grey }: GreyPicture): GreyPicture {
  const other = new Uint8Array(grey.length);
  for (let k = 0; k < grey.length; k++) other[k] = 255 - grey[k]!;
  return { width, height, grey: other };
}

import { useEffect, useState } from 'react';
import type { PaperPicture } from '#pattern/pattern.ts';
import { decodePaper } from './paper-under.ts';

/**
 * The decoded picture of a paper; null while it is not there yet, and where the browser cannot read it: the pins are
 * shown without it then. Another scale of the paper is no reason to decode it anew.
 */
export function usePaperPicture(file: Blob | undefined, paper: PaperPicture | undefined): ImageBitmap | null {
  const [picture, setPicture] = useState<ImageBitmap | null>(null);
  const { width = 0, height = 0 } = paper ?? {};
  useEffect(() => {
    if (!file) return;
    let decoded: ImageBitmap | null = null;
    let wanted = true;
    decodePaper(file, { width, height }).then(
      (bitmap) => {
        if (!wanted) return bitmap.close();
        decoded = bitmap;
        setPicture(bitmap);
      },
      () => {},
    );
    return () => {
      wanted = false;
      setPicture(null);
      decoded?.close();
    };
  }, [file, width, height]);
  return picture;
}

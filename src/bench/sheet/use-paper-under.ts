import { useEffect, useMemo, useState } from 'react';
import type { PaperPicture } from '#pattern/pattern.ts';
import { decodePaper } from './decode-paper.ts';
import { MOST_SIDE, PaperUnder } from './paper-under.ts';

/**
 * The picture of a paper as the sheet draws it; null while it is not decoded yet, and where the browser cannot read it:
 * the pins are shown without it then. Another scale of the paper is no reason to decode it anew.
 */
export function usePaperUnder(file: Blob | undefined, paper: PaperPicture | undefined): PaperUnder | null {
  const [levels, setLevels] = useState<readonly ImageBitmap[] | null>(null);
  const { width = 0, height = 0 } = paper ?? {};
  useEffect(() => {
    if (!file) return;
    const left = new AbortController();
    let decoded: readonly ImageBitmap[] = [];
    decodePaper({ file, width, height, mostSide: MOST_SIDE }, left.signal).then(
      (made) => {
        decoded = made;
        setLevels(made);
      },
      () => {},
    );
    return () => {
      left.abort();
      setLevels(null);
      for (const level of decoded) level.close();
    };
  }, [file, width, height]);
  return useMemo(() => (paper && levels ? new PaperUnder(levels, paper) : null), [paper, levels]);
}

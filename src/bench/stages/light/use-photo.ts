import { useEffect, useState } from 'react';
import { PaperUnder } from '../../sheet/paper-under.ts';
import type { CardChecked } from '../../worker/light-jobs.ts';

/** The photo of a checked card, ready to lie under the pins; put away when it is shown no more. */
export function usePhoto(checked: CardChecked | null): PaperUnder | null {
  const [photo, setPhoto] = useState<PaperUnder | null>(null);
  useEffect(() => {
    if (!checked) return;
    const under = new PaperUnder([checked.photo.bitmap], checked.photo);
    setPhoto(under);
    return () => {
      setPhoto(null);
      under.close();
    };
  }, [checked]);
  return photo;
}

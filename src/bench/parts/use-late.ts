import { useEffect, useState } from 'react';

/** Work that is done sooner is not worth a word, ms. */
const LATE = 600;

/** Whether something has been under way so long that it should be said. */
export function useLate(isBusy: boolean): boolean {
  const [isLate, setLate] = useState(false);
  useEffect(() => {
    if (!isBusy) return;
    const timer = setTimeout(() => setLate(true), LATE);
    return () => {
      clearTimeout(timer);
      setLate(false);
    };
  }, [isBusy]);
  return isLate;
}

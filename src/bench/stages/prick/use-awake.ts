import { useEffect, useState } from 'react';

/** Whether the screen stays light: asked for, granted, refused by the device, or nothing that this browser can do. */
export type Awake = 'asked' | 'awake' | 'refused' | 'unknown-here';

/**
 * Keeps the screen from going dark while it is `wanted`. Browsers let go of it whenever the page is hidden, so that it
 * is asked for anew each time it is seen again.
 */
export function useAwake(wanted: boolean): Awake {
  const [awake, setAwake] = useState<Awake>('wakeLock' in navigator ? 'asked' : 'unknown-here');
  useEffect(() => {
    if (!wanted || !('wakeLock' in navigator)) return;
    let held: WakeLockSentinel | null = null;
    let over = false;
    const ask = async () => {
      if (document.visibilityState !== 'visible') return;
      try {
        const lock = await navigator.wakeLock.request('screen');
        if (over) return void lock.release();
        held = lock;
        setAwake('awake');
        lock.addEventListener('release', () => !over && setAwake('asked'));
      } catch {
        // Refused, such as where the battery is nearly empty.
        if (!over) setAwake('refused');
      }
    };
    ask();
    document.addEventListener('visibilitychange', ask);
    return () => {
      over = true;
      document.removeEventListener('visibilitychange', ask);
      held?.release();
    };
  }, [wanted]);
  return awake;
}

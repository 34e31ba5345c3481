import { Watched } from '../watched/watched.ts';

/** A newer bench that waits to take over, or null where there is none. */
export const waiting = new Watched<ServiceWorker | null>(null);

/** Whether a newer bench took over in another page, so that this one is of the past. */
export const renewed = new Watched(false);

/**
 * Keeps the bench in this browser, so that it opens without a network. Where the browser cannot, the bench works all
 * the same while there is one.
 */
export async function keepOffline(): Promise<void> {
  if (!('serviceWorker' in navigator) || !import.meta.env.PROD) return;
  // Where there is none yet, the first one takes over as soon as it is here, and nothing changes by it.
  let current = navigator.serviceWorker.controller;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (current && !takingOver) renewed.set(true);
    current = navigator.serviceWorker.controller;
  });
  try {
    const registration = await navigator.serviceWorker.register('./service-worker.js', {
      updateViaCache: 'none',
    });
    const watch = (worker: ServiceWorker | null) =>
      worker?.addEventListener('statechange', () => {
        if (worker.state === 'installed' && navigator.serviceWorker.controller) waiting.set(worker);
      });
    if (registration.waiting && navigator.serviceWorker.controller) waiting.set(registration.waiting);
    watch(registration.installing);
    registration.addEventListener('updatefound', () => watch(registration.installing));
  } catch {
    // Blocked, or not allowed in this window: nothing to tell, since nothing is lost.
  }
}

let takingOver = false;

/** Lets the newer bench take over and loads it; by then everything must be put away. */
export function takeOver(): void {
  const worker = waiting.get();
  if (!worker) return;
  takingOver = true;
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  worker.postMessage('take-over');
}

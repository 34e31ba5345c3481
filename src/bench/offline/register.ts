import { Watched } from '../watched/watched.ts';

/** A newer bench that waits to take over, or null where there is none. */
export const waiting = new Watched<ServiceWorker | null>(null);

/**
 * Keeps the bench in this browser, so that it opens without a network. Where the browser cannot, the bench works all
 * the same while there is one.
 */
export async function keepOffline(): Promise<void> {
  if (!('serviceWorker' in navigator) || !import.meta.env.PROD) return;
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

/** Lets the newer bench take over and loads it; what was done is put away by then. */
export function takeOver(): void {
  const worker = waiting.get();
  if (!worker) return;
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  worker.postMessage('take-over');
}

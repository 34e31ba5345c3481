import { isInstalled } from '../store/is-installed.ts';
import { Watched } from '../watched/watched.ts';

/** What a browser hands over that can put the bench among the programs of the device. */
interface InstallOffer extends Event {
  prompt(): Promise<unknown>;
}

export type Installing =
  /** In place already, or no way to it here. */
  | { readonly by: 'none' }
  | { readonly by: 'browser'; readonly install: () => Promise<void> }
  /** Only the person can, through the browser's own menu: so it is on an iPad. */
  | { readonly by: 'hand' };

/** How the bench can be put on this device. */
export const installing = new Watched<Installing>({ by: 'none' });

/** Keeps the browser's offer, which comes once, until the person takes it. */
export function watchInstalling(): void {
  // Only Safari on an iPad or iPhone has this property; it is false where the bench is open as a page.
  if (!isInstalled() && (navigator as { standalone?: boolean }).standalone === false) {
    installing.set({ by: 'hand' });
  }
  addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault();
    const offer = event as InstallOffer;
    installing.set({
      by: 'browser',
      install: async () => {
        // The offer can be taken once; the browser makes another when it thinks fit.
        installing.set({ by: 'none' });
        await offer.prompt();
      },
    });
  });
  addEventListener('appinstalled', () => installing.set({ by: 'none' }));
}

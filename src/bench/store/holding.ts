/** Who may edit a design: one page of this browser at a time. */
export interface Holding {
  /** Whether this page holds it. */
  readonly held: boolean;
  /** Takes it from the page that holds it, once that page has put everything away. */
  takeOver(): Promise<void>;
  release(): void;
}

export interface HoldingEvents {
  /** This page must let go: it puts everything away, and then edits no more. */
  letGo(): Promise<void>;
  /** Whether this page holds the design has changed. */
  changed(held: boolean): void;
}

/** How long the other page is given to put its work away before the design is taken all the same. */
const PATIENCE = 2000;

/** Asks for a design. Where another page holds it, it is only shown. */
export async function holdDesign(id: string, events: HoldingEvents): Promise<Holding> {
  const name = `pinlight-design-${id}`;
  const channel = new BroadcastChannel(name);
  let release: (() => void) | null = null;

  // Over a connection that is not secure browsers have none: then what is put away late goes to a copy.
  const locks: LockManager | undefined = navigator.locks;
  const request = async (wish: LockOptions): Promise<boolean> =>
    locks === undefined ||
    new Promise((resolve) => {
      locks
        .request(name, wish, (lock) => {
          resolve(lock !== null);
          if (!lock) return;
          return new Promise<void>((done) => {
            release = done;
          });
        })
        .catch(() => {
          // Taken by another page without asking: what is not yet put away goes to a copy.
          release = null;
          events.changed(false);
        });
    });

  channel.onmessage = async ({ data }: MessageEvent) => {
    if (data !== 'wanted' || !release) return;
    await events.letGo();
    release?.();
    release = null;
    events.changed(false);
    channel.postMessage('free');
  };

  const held = await request({ ifAvailable: true });
  return {
    held,
    async takeOver() {
      const freed = new Promise<void>((resolve) => {
        channel.addEventListener('message', ({ data }) => data === 'free' && resolve());
        setTimeout(resolve, PATIENCE);
      });
      channel.postMessage('wanted');
      await freed;
      events.changed(await request({ steal: true }));
    },
    release() {
      release?.();
      channel.close();
    },
  };
}

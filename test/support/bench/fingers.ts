import type { CDPSession, Page } from 'playwright-core';

export type At = readonly [x: number, y: number];

/** Fingers and a pen on the screen, as the browser itself reports them to a page. Places are CSS pixels of the page. */
export class Fingers {
  readonly #session: CDPSession;

  private constructor(session: CDPSession) {
    this.#session = session;
  }

  static async on(page: Page): Promise<Fingers> {
    return new Fingers(await page.context().newCDPSession(page));
  }

  /** Fingers come down beside those that are down already; all of them are named. */
  down = (...all: readonly At[]): Promise<unknown> => this.#send('touchStart', all);

  /** Fingers move; one that is no longer named is lifted. */
  move = (...all: readonly At[]): Promise<unknown> => this.#send('touchMove', all);

  /** All are lifted. */
  up = (): Promise<unknown> => this.#send('touchEnd', []);

  /** The system takes the fingers away, as for a call that comes in. */
  cancel = (): Promise<unknown> => this.#send('touchCancel', []);

  async tap(...all: readonly At[]): Promise<void> {
    await this.down(...all);
    await this.up();
  }

  /** Fingers come down, go from place to place and are lifted. */
  async glide(...places: readonly (readonly At[])[]): Promise<void> {
    await this.down(...places[0]!);
    for (const [index, to] of places.slice(1).entries()) await this.glideOn(places[index]!, to);
    await this.up();
  }

  /** Fingers that are down go on, in ten steps. */
  async glideOn(from: readonly At[], to: readonly At[]): Promise<void> {
    for (let step = 1; step <= 10; step++) {
      const between = (a: number, b: number) => a + ((b - a) * step) / 10;
      await this.move(
        ...to.map(([x, y], finger): At => [between(from[finger]![0], x), between(from[finger]![1], y)]),
      );
    }
  }

  pen(type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', [x, y]: At): Promise<unknown> {
    const pressed = type === 'mouseMoved' ? { buttons: 1 } : { clickCount: 1 };
    return this.#session.send('Input.dispatchMouseEvent', {
      ...{ type, x, y, button: 'left', pointerType: 'pen' },
      ...pressed,
    });
  }

  #send(
    type: 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel',
    places: readonly At[],
  ): Promise<unknown> {
    const touchPoints = places.map(([x, y], id) => ({ x, y, id }));
    return this.#session.send('Input.dispatchTouchEvent', { type, touchPoints });
  }
}

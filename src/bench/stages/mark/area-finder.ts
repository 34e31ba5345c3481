import type { Point } from '#base/geometry/point.ts';
import type { Reach } from '#craft/mark/bounds.ts';
import { areaInWords, areaTroubleInWords } from '#jobs/words/area.ts';
import type { Anchor, Pattern } from '#pattern/pattern.ts';
import { HeldWorker } from '../../worker/held-worker.ts';

/** What a touch inside of lines finds. */
export type Touched =
  | { readonly outline: readonly Anchor[]; readonly note: string | null }
  | { readonly outline: null; readonly note: string };

/** Finds what lines enclose, beside the page: among many lines that takes longer than a page may be deaf. */
export class AreaFinder {
  #worker: HeldWorker | null = null;

  /** Gets ready, so that the first touch need not wait. */
  warm(): void {
    this.#held();
  }

  /** Rejects with `CalledOff` where the finder is closed meanwhile. */
  async find(pattern: Pattern, reach: Reach, at: Point): Promise<Touched> {
    const worker = this.#held();
    try {
      const found = await worker.run('areaAt', [pattern, reach, at]);
      if (!found.ok) return { outline: null, note: areaTroubleInWords(found.trouble) };
      const { outline, crossings, islands } = found.value;
      return { outline, note: areaInWords({ crossings: crossings.length, islands }) };
    } catch (error) {
      if (this.#worker === worker) this.close();
      throw error;
    }
  }

  close(): void {
    this.#worker?.close();
    this.#worker = null;
  }

  #held(): HeldWorker {
    this.#worker ??= new HeldWorker();
    return this.#worker;
  }
}

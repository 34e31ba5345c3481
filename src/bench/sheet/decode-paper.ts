import { wrap } from 'comlink';
import type { PaperFile } from './paper-levels.ts';
import type { Decoding } from './paper-worker.ts';

/**
 * A picture file, decoded for the screen: the whole of it, and smaller ones. Rejects where the browser cannot read it,
 * and where `signal` calls it off.
 */
export async function decodePaper(paper: PaperFile, signal?: AbortSignal): Promise<readonly ImageBitmap[]> {
  signal?.throwIfAborted();
  const worker = new Worker(new URL('./paper-worker.ts', import.meta.url), { type: 'module' });
  const ended = new Promise<never>((_, reject) => {
    signal?.addEventListener('abort', () => reject(signal.reason), { once: true });
    worker.addEventListener('error', ({ message }) => reject(new Error(message)), { once: true });
  });
  try {
    return await Promise.race([wrap<Decoding>(worker).levels(paper), ended]);
  } finally {
    worker.terminate();
  }
}

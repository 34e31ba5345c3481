import { expose, transfer } from 'comlink';
import { type PaperFile, paperLevels } from './paper-levels.ts';

/** Decodes and shrinks pictures beside the page: in the page, shrinking a large one would hold everything up. */
const decoding = {
  async levels(paper: PaperFile): Promise<ImageBitmap[]> {
    const levels = await paperLevels(paper);
    return transfer(levels, levels);
  },
};

export type Decoding = typeof decoding;

expose(decoding);

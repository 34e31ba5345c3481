import { done, type Result } from '#base/result.ts';
import { type CutFile, type CuttingNote, cutPattern } from '#jobs/cut/cut.ts';
import type { CutWish } from '#jobs/cut/wish.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import type { CutTrouble } from '#paper/cut/options.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { openFonts } from '../fonts.ts';

export interface CutRequest {
  readonly pattern: Pattern;
  readonly wish: Omit<CutWish, 'typeface'>;
}

export interface CutMade {
  readonly files: readonly CutFile[];
  readonly notes: readonly CuttingNote[];
  /** The sheet that is printed first, where it was asked for. */
  readonly pdf: Uint8Array | null;
}

export async function cutFiles({ pattern, wish }: CutRequest): Promise<Result<CutMade, CutTrouble>> {
  const typeface = await openFonts();
  const cut = cutPattern(pattern, { typeface, ...wish });
  if (!cut.ok) return cut;
  const { files, notes, sheet } = cut.value;
  const title = pattern.about.name ?? 'Lace pattern';
  const pdf = sheet && (await sheetsToPdf([sheet], typeface, title, pattern));
  return done({ files, notes, pdf });
}

import { z } from 'zod';
import type { Sheet } from '#paper/sheet/sheet.ts';
import { rounded } from './numbers.ts';

/** What `pinlight print --json` prints. */
export const printResult = z.strictObject({
  sheets: z.array(
    z.strictObject({
      id: z.string(),
      kind: z.string(),
      title: z.string(),
      paper: z.string(),
      width: z.number().describe('Of the paper as it lies, mm.'),
      height: z.number(),
    }),
  ),
  files: z.array(z.string()).describe('The files that were written, in the order of their making.'),
  notes: z.array(z.string()).describe('What a person should know, in words.'),
});

export type PrintResult = z.infer<typeof printResult>;

export const toPrintResult = (
  sheets: readonly Sheet[],
  files: readonly string[],
  notes: readonly string[],
): PrintResult => ({
  sheets: sheets.map(({ id, kind, title, paper }) => ({
    id,
    kind,
    title,
    paper: paper.name,
    width: rounded(paper.width),
    height: rounded(paper.height),
  })),
  files: [...files],
  notes: [...notes],
});

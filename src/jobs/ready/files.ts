import type { Finding } from '#craft/look/finding.ts';
import type { SummarySection } from '#paper/sheet/summary.ts';
import { type PatternWithPictures, writeContainer } from '#pattern/container/container.ts';
import { writePattern } from '#pattern/file/write.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { findingsInWords } from '../words/look.ts';
import { summaryText } from '../words/summary.ts';

/** One file of the folder. */
export interface ReadyFile {
  readonly name: string;
  readonly content: Uint8Array | string;
}

/** The file by which a folder shows that `ready` made it, and may make it anew. */
export const READY_MARK = 'made-by-pinlight.json';

interface Made {
  readonly input: PatternWithPictures;
  readonly trued: Pattern;
  readonly findings: readonly Finding[];
  readonly sections: readonly SummarySection[];
  readonly pdf: Readonly<Record<'summary' | 'before' | 'through' | 'film', Uint8Array>>;
  readonly png: { readonly before: Uint8Array; readonly film: readonly Uint8Array[] };
}

/** The files in the order in which they are used; their names say so. */
export function readyFiles({ input, trued, findings, sections, pdf, png }: Made): ReadyFile[] {
  const { paper: _, ...alone } = trued;
  const files: ReadyFile[] = [
    { name: '01-read-me-first.txt', content: summaryText(sections) },
    { name: '01-summary.pdf', content: pdf.summary },
    { name: '02-before-and-after.pdf', content: pdf.before },
    { name: '02-before-and-after.png', content: png.before },
    { name: '03-looked-over.txt', content: findingsInWords(findings) },
    { name: '04-prick-through.pdf', content: pdf.through },
    { name: '05-under-film.pdf', content: pdf.film },
    ...png.film.map((content) => ({ name: '05-under-film-as-it-will-look.png', content })),
    { name: '06-pattern-straightened.json', content: writePattern(alone) },
    ...withPicture('07-pattern-as-found', input),
    ...withPicture('07-pattern-straightened', { pattern: trued, pictures: input.pictures }),
  ];
  const mark = {
    format: 'pinlight-ready',
    version: 1,
    files: [...files.map(({ name }) => name), READY_MARK],
  };
  return [...files, { name: READY_MARK, content: `${JSON.stringify(mark, null, 2)}\n` }];
}

/** A pattern together with the picture of its paper; a pattern without one is a plain file. */
const withPicture = (name: string, file: PatternWithPictures): ReadyFile[] =>
  file.pattern.paper === undefined
    ? name.includes('found')
      ? [{ name: `${name}.json`, content: writePattern(file.pattern) }]
      : []
    : [{ name: `${name}.pinlight`, content: writeContainer(file) }];

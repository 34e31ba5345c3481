import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { openTypeface, type Typeface } from '#paper/type/typeface.ts';

const require = createRequire(import.meta.url);

const FILES = {
  regular: '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf',
  bold: '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf',
  fallback: 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf',
} as const;

let opened: Typeface | undefined;

/** The typeface that the sheets are printed in; its files are part of every PDF, so that it prints everywhere. */
export function openFonts(): Typeface {
  opened ??= openTypeface({
    regular: read(FILES.regular),
    bold: read(FILES.bold),
    fallback: read(FILES.fallback),
  });
  return opened;
}

const read = (name: string): Uint8Array => new Uint8Array(readFileSync(require.resolve(name)));

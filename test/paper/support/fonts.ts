import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { openTypeface, type Typeface } from '#paper/type/typeface.ts';

const require = createRequire(import.meta.url);
const file = (name: string): Uint8Array => new Uint8Array(readFileSync(require.resolve(name)));

/** The typeface that the sheets are printed in. */
export const typeface: Typeface = openTypeface({
  regular: file('@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf'),
  bold: file('@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf'),
  fallback: file('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'),
});

import regular from '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?url';
import bold from '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf?url';
import fallback from 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url';
import { openTypeface, type Typeface } from '#paper/type/typeface.ts';

/** The typeface that the sheets are printed in: the very files that the command prints with, kept with the bench. */
export async function openFonts(): Promise<Typeface> {
  const [regularBytes, boldBytes, fallbackBytes] = await Promise.all([regular, bold, fallback].map(read));
  return openTypeface({ regular: regularBytes!, bold: boldBytes!, fallback: fallbackBytes! });
}

async function read(address: string): Promise<Uint8Array> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`openFonts: ${address} answers ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}

/** The picture formats that are read, by the name `sharp` gives them. */
export type PictureFormat = 'jpeg' | 'png' | 'tiff' | 'webp';

/** What the first bytes of a file say it is: a format we read, another known kind, or nothing we know. */
export type Kind =
  | { readonly format: PictureFormat }
  | { readonly other: 'GIF' | 'HEIC' | 'AVIF' | 'PDF' | 'SVG' | 'BMP' | 'JSON' | 'zip' | null };

/** Sniffs a file by its first bytes; its name is never asked. */
export function kindOf(bytes: Uint8Array): Kind {
  if (startsWith(bytes, [0xff, 0xd8, 0xff])) return { format: 'jpeg' };
  if (startsWith(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return { format: 'png' };
  if (startsWith(bytes, [0x49, 0x49, 0x2a, 0]) || startsWith(bytes, [0x4d, 0x4d, 0, 0x2a])) {
    return { format: 'tiff' };
  }
  const head = String.fromCharCode(...bytes.subarray(0, 64));
  if (head.startsWith('RIFF') && head.slice(8, 12) === 'WEBP') return { format: 'webp' };
  if (head.startsWith('GIF8')) return { other: 'GIF' };
  if (head.startsWith('%PDF-')) return { other: 'PDF' };
  if (head.startsWith('BM') && bytes.length > 26 && bytes[15] === 0) return { other: 'BMP' };
  if (head.startsWith('PK\x03\x04')) return { other: 'zip' };
  if (head.slice(4, 8) === 'ftyp') return { other: head.slice(8, 11) === 'avi' ? 'AVIF' : 'HEIC' };
  const text = head.replace(/^\xef\xbb\xbf/, '').trimStart();
  if (/^(<\?xml|<svg|<!DOCTYPE svg)/i.test(text)) return { other: 'SVG' };
  if (/^[{[]/.test(text)) return { other: 'JSON' };
  return { other: null };
}

/** Whether a file may hold a pattern: it is no picture or document of any known kind. */
export function mayBePattern(bytes: Uint8Array): boolean {
  const kind = kindOf(bytes);
  return 'other' in kind && (kind.other === null || kind.other === 'JSON' || kind.other === 'zip');
}

const startsWith = (bytes: Uint8Array, start: readonly number[]): boolean =>
  start.every((byte, index) => bytes[index] === byte);

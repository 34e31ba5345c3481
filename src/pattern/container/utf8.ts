import { strFromU8, strToU8 } from 'fflate';

export const encodeUtf8 = (text: string): Uint8Array => strToU8(text);

/** The text of some UTF-8, without its byte order mark; null where the bytes are not UTF-8. */
export function decodeUtf8(bytes: Uint8Array): string | null {
  const body = hasMark(bytes) ? bytes.subarray(3) : bytes;
  const text = decoded(body);
  // The decoder puts a substitute for what it cannot read, so only what encodes back is what was there.
  return text !== null && sameBytes(strToU8(text), body) ? text : null;
}

function decoded(bytes: Uint8Array): string | null {
  try {
    return strFromU8(bytes);
  } catch {
    return null;
  }
}

const hasMark = (bytes: Uint8Array): boolean => bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;

function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  if (a.length !== b.length) return false;
  for (let at = 0; at < a.length; at++) if (a[at] !== b[at]) return false;
  return true;
}

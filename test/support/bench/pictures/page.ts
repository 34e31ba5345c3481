import { wrap } from 'comlink';
import type { Reading } from './worker.ts';

/** Large lists of bytes go between the test and the browser as base64, in properties of the global object. */
const remote = wrap<Reading>(new Worker('/worker.js', { type: 'module' }));

const inText = (value: unknown): unknown => {
  if (value instanceof Uint8Array) return { base64: toBase64(value) };
  if (Array.isArray(value)) return value.map(inText);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, inText(each)]));
};

function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 8192)
    text += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return btoa(text);
}

const fromBase64 = (text: string): Uint8Array =>
  Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));

Object.assign(globalThis, {
  readPicture: async (bytes: string, name: string | null) =>
    inText(await remote.picture(fromBase64(bytes), name)),
  readPixels: async (bytes: string) => inText(await remote.pixels(fromBase64(bytes))),
});

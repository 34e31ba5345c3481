/** Whether this browser lacks what the whole bench rests on, so that it could not even begin. */
const isTooOld = (): boolean =>
  typeof OffscreenCanvas === 'undefined' ||
  typeof BroadcastChannel === 'undefined' ||
  !('toSorted' in Array.prototype) ||
  !new OffscreenCanvas(1, 1).getContext('2d');

const WORDS =
  'This browser is too old for Pinlight. Nothing is lost: patterns that it keeps are still there once it is renewed. Pinlight works in Safari from 16.4 on (on an iPad or iPhone: iOS or iPadOS 16.4), Firefox from 115 and Chrome or Edge from 110. Bring this browser up to date, or open Pinlight in another.';

/** Puts a sentence on the page where the browser is too old for the bench; true where it did. */
export function toldTooOld(): boolean {
  if (!isTooOld()) return false;
  const [title, words] = [document.createElement('h1'), document.createElement('p')];
  title.textContent = 'Pinlight';
  words.textContent = WORDS;
  words.setAttribute('role', 'alert');
  document.getElementById('bench')!.append(title, words);
  return true;
}

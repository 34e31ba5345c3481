import type { BrowserContext } from 'playwright-core';

/**
 * What came into some browser after the oldest that the bench is for, or is not in all of them: Safari 16.4, Firefox 115,
 * Chrome 110. From memory of what browsers tell of themselves.
 */
const NEWER = `
  for (const [holder, names] of [
    [globalThis, ['requestIdleCallback', 'cancelIdleCallback', 'showSaveFilePicker', 'showOpenFilePicker', 'scheduler',
      'navigation', 'CompressionStream', 'DecompressionStream', 'ImageDecoder', 'VideoFrame', 'launchQueue', 'URLPattern',
      'cookieStore', 'Iterator', 'Float16Array', 'trustedTypes']],
    [Promise, ['withResolvers', 'try']],
    [Array, ['fromAsync']],
    [Object, ['groupBy']],
    [Map, ['groupBy']],
    [Map.prototype, ['getOrInsert', 'getOrInsertComputed']],
    [RegExp, ['escape']],
    [Error, ['isError']],
    [Math, ['f16round', 'sumPrecise']],
    [Intl, ['DurationFormat', 'Segmenter']],
    [URL, ['canParse', 'parse']],
    [AbortSignal, ['any']],
    [Uint8Array, ['fromHex', 'fromBase64']],
    [Uint8Array.prototype, ['toHex', 'toBase64', 'setFromHex', 'setFromBase64']],
    [ArrayBuffer.prototype, ['transfer', 'transferToFixedLength', 'resize', 'resizable']],
    [String.prototype, ['isWellFormed', 'toWellFormed']],
    [Set.prototype, ['union', 'intersection', 'difference', 'symmetricDifference', 'isSubsetOf', 'isSupersetOf',
      'isDisjointFrom']],
    [Object.getPrototypeOf(Object.getPrototypeOf([].values())), ['map', 'filter', 'take', 'drop', 'flatMap', 'reduce',
      'toArray', 'forEach', 'some', 'every', 'find']],
    [ReadableStream.prototype, ['values', Symbol.asyncIterator]],
    [Blob.prototype, ['bytes']],
    [Response.prototype, ['bytes']],
    ...(typeof document === 'undefined' ? [] : [
      [Document.prototype, ['startViewTransition', 'caretPositionFromPoint']],
      [Element.prototype, ['checkVisibility', 'moveBefore', 'setHTML', 'ariaNotify']],
      [HTMLElement.prototype, ['popover', 'showPopover', 'hidePopover', 'togglePopover']],
      [Navigator.prototype, ['storage', 'wakeLock', 'userAgentData', 'keyboard', 'scheduling', 'virtualKeyboard']],
    ]),
  ]) for (const name of names) delete holder[name];
`;

/**
 * Makes the pages and workers of a browser lack it, and counts the workers' files that do. There must be no service
 * worker, which would give the workers' files as they are.
 */
export async function makeOlder(context: BrowserContext): Promise<{ workers(): number }> {
  let workers = 0;
  await context.addInitScript(NEWER);
  await context.route(/\/assets\/(?:paper-)?worker-[^/]*\.js$/, async (route) => {
    const file = await route.fetch();
    workers++;
    await route.fulfill({ response: file, body: `${await file.text()}\n;{${NEWER}}` });
  });
  return { workers: () => workers };
}

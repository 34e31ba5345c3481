/** Puts a store in memory in the place of the browser's own; the package brings no types for this entry. */
declare module 'fake-indexeddb/auto';

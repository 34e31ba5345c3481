import { useSyncExternalStore } from 'react';
import { mmToInches } from '#base/units/length.ts';

/** How this person likes the bench. Kept in this browser, apart from all patterns. */
export interface Preferences {
  readonly unit: 'mm' | 'in';
  readonly decimal: '.' | ',';
  readonly look: 'light' | 'dark' | 'system';
  /** Size of text, 1 to 2. */
  readonly text: number;
}

const KEY = 'pinlight-preferences';
const usual: Preferences = { unit: 'mm', decimal: '.', look: 'system', text: 1 };
const listeners = new Set<() => void>();
let present = read();

export function setPreferences(change: Partial<Preferences>): void {
  present = { ...present, ...change };
  try {
    localStorage.setItem(KEY, JSON.stringify(present));
  } catch {
    // Where the browser keeps nothing, they hold until the page is closed.
  }
  show();
  for (const listener of listeners) listener();
}

export const preferences = (): Preferences => present;

/** The preferences, and a length in millimetres as this person reads it. */
export function usePreferences(): Preferences & { readonly shown: (mm: number) => string } {
  const now = useSyncExternalStore(subscribe, preferences);
  return { ...now, shown: (mm) => shownLength(mm, now) };
}

export function shownLength(mm: number, { unit, decimal }: Preferences): string {
  const number = unit === 'mm' ? Number(mm.toFixed(2)) : Number(mmToInches(mm).toFixed(3));
  return `${String(number).replace('.', decimal)} ${unit}`;
}

/** Puts the preferences that style sheets read on the page. */
export function show(): void {
  const page = document.documentElement;
  page.dataset.look = present.look;
  page.style.setProperty('--text', String(present.text));
}

function read(): Preferences {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    return isPreferences(kept) ? { ...usual, ...kept } : usual;
  } catch {
    return usual;
  }
}

/** Only what is well-formed is taken from the store: it may be of another version, or damaged. */
function isPreferences(kept: unknown): kept is Partial<Preferences> {
  if (typeof kept !== 'object' || kept === null) return false;
  const { unit, decimal, look, text } = kept as Record<string, unknown>;
  return (
    (unit === undefined || unit === 'mm' || unit === 'in') &&
    (decimal === undefined || decimal === '.' || decimal === ',') &&
    (look === undefined || look === 'light' || look === 'dark' || look === 'system') &&
    (text === undefined || (typeof text === 'number' && text >= 1 && text <= 2))
  );
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

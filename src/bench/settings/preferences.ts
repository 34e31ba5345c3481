import { formatInches, formatMm } from '#base/units/format-length.ts';
import type { FilmName } from '#paper/ink/tints.ts';
import { useWatched } from '../watched/use-watched.ts';
import { Watched } from '../watched/watched.ts';

/** How this person likes the bench. Kept in this browser, apart from all patterns. */
export interface Preferences {
  readonly unit: 'mm' | 'in';
  readonly decimal: '.' | ',';
  readonly look: 'light' | 'dark' | 'system';
  /** Size of text, 1 to 2. */
  readonly text: number;
  /** Whether a second tap straight after the first counts. */
  readonly repeats: 'once' | 'each';
  /** Whether fingers only move the sheet, and a pen works on it. */
  readonly penOnly: boolean;
  /** Whether pins that are added or moved fall in line with their neighbours. */
  readonly inLine: boolean;
  /** Under which film cards are pricked, and patterns looked at. */
  readonly film: FilmName;
}

const KEY = 'pinlight-preferences';
const usual: Preferences = {
  ...{ unit: 'mm', decimal: '.', look: 'system', text: 1 },
  ...{ repeats: 'once', penOnly: false, inLine: true, film: 'none' },
};
const present = new Watched(read());

export function setPreferences(change: Partial<Preferences>): void {
  present.set({ ...present.get(), ...change });
  try {
    localStorage.setItem(KEY, JSON.stringify(present.get()));
  } catch {
    // Where the browser keeps nothing, they hold until the page is closed.
  }
  show();
}

/** The preferences as they are. */
export const preferencesNow = (): Preferences => present.get();

/** Takes the preferences of a backup where this browser has none of its own. */
export function takePreferences(kept: unknown): void {
  if (isPreferences(kept) && present.get() === usual) setPreferences(kept);
}

/** The preferences, and a length in millimetres as this person reads it. */
export function usePreferences(): Preferences & { readonly shown: (mm: number) => string } {
  const now = useWatched(present);
  return { ...now, shown: (mm) => shownLength(mm, now) };
}

const shownLength = (mm: number, { unit, decimal }: Preferences): string =>
  (unit === 'mm' ? formatMm(mm) : formatInches(mm)).replace('.', decimal);

const darkDevice = matchMedia('(prefers-color-scheme: dark)');

/** Puts the preferences that style sheets read on the page, and follows the device where it decides the look. */
export function show(): void {
  const { look, text } = present.get();
  const page = document.documentElement;
  page.dataset.look = look === 'system' ? (darkDevice.matches ? 'dark' : 'light') : look;
  page.style.setProperty('--text', String(text));
  darkDevice.onchange = show;
}

function read(): Preferences {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    return isPreferences(kept) && Object.keys(kept).length > 0 ? { ...usual, ...kept } : usual;
  } catch {
    return usual;
  }
}

/** Only what is well-formed is taken from the store: it may be of another version, or damaged. */
function isPreferences(kept: unknown): kept is Partial<Preferences> {
  if (typeof kept !== 'object' || kept === null) return false;
  const { unit, decimal, look, text, repeats, penOnly, inLine, film } = kept as Record<string, unknown>;
  return (
    (unit === undefined || unit === 'mm' || unit === 'in') &&
    (decimal === undefined || decimal === '.' || decimal === ',') &&
    (look === undefined || look === 'light' || look === 'dark' || look === 'system') &&
    (text === undefined || (typeof text === 'number' && text >= 1 && text <= 2)) &&
    (repeats === undefined || repeats === 'once' || repeats === 'each') &&
    (penOnly === undefined || typeof penOnly === 'boolean') &&
    (inLine === undefined || typeof inLine === 'boolean') &&
    (film === undefined || film === 'none' || film === 'blue' || film === 'grey')
  );
}

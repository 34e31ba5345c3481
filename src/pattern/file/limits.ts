/**
 * How large a pattern file may be. Far above anything a pillow can hold, low enough that a hostile file is refused
 * before it costs much time or memory.
 */

/** Length of the JSON text in characters (UTF-16 code units). */
export const MAX_TEXT_LENGTH = 100_000_000;

/** No text within that limit takes more bytes of UTF-8 than this. */
export const MAX_TEXT_BYTES = 3 * MAX_TEXT_LENGTH;

/** Numbers, texts, objects, lists and so on in the JSON text: each costs the parser memory, however short it is. */
export const MAX_VALUES = 10_000_000;

/** How deep objects and lists may lie in each other; a pattern needs five. */
export const MAX_DEPTH = 32;

export const MAX_PINS = 1_000_000;
export const MAX_RUNS = 100_000;
export const MAX_MARKS = 1_000_000;
export const MAX_AREAS = 100_000;

/** Pins in one run, anchors in one path or outline. */
export const MAX_PATH = 50_000;

/** Farthest a place may lie from the origin, in the pattern's unit: 100 m. */
export const MAX_COORDINATE = 100_000;

/** The smallest length that a file can carry, mm: numbers are rounded to it when written. */
export const MIN_LENGTH = 0.001;

export const MAX_ID_LENGTH = 64;
/** Names, stitches, labels and the lines of `about`, in UTF-16 code units. */
export const MAX_LINE_LENGTH = 1_000;
export const MAX_NOTES_LENGTH = 20_000;

export const MAX_REPEATS = 100_000;
export const MAX_DPI = 100_000;
/** Picture width and height, pixels: the most that a JPEG file can hold (ITU-T T.81, 16-bit sizes). */
export const MAX_PICTURE_SIDE = 65_535;

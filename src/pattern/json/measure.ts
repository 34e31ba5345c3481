/** How much a JSON text holds, found without building any of it. */
export interface JsonMeasure {
  /** Most objects and lists that lie in each other at one place. */
  readonly depth: number;
  /** Upper bound of its values: each is the top, or the first in an object or list, or follows a comma. */
  readonly values: number;
}

const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const COMMA = 0x2c;
const OPEN_LIST = 0x5b;
const CLOSE_LIST = 0x5d;
const OPEN_OBJECT = 0x7b;
const CLOSE_OBJECT = 0x7d;

/**
 * Counts before anything is parsed, because a parser spends some fifty bytes on every `[]`: a text that is
 * nothing but brackets would otherwise fill the memory. Makes no claim about whether the text is JSON.
 */
export function measureJson(text: string): JsonMeasure {
  let depth = 0;
  let deepest = 0;
  let values = 1;
  let inString = false;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (inString) {
      if (code === BACKSLASH) at++;
      else if (code === QUOTE) inString = false;
    } else if (code === QUOTE) inString = true;
    else if (code === COMMA) values++;
    else if (code === OPEN_LIST || code === OPEN_OBJECT) {
      values++;
      depth++;
      if (depth > deepest) deepest = depth;
    } else if (code === CLOSE_LIST || code === CLOSE_OBJECT) depth--;
  }
  return { depth: deepest, values };
}

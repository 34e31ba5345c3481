/**
 * Where a text stops being JSON (RFC 8259): the offset of the first character that cannot stand there, the length
 * of the text where it ends too early, or null where it is JSON. Engines word this differently or leave the place
 * out, so it is found here. Keeps its own stack: no nesting is too deep for it.
 */
export function findJsonFault(text: string): number | null {
  const open: string[] = [];
  let at = skipBlank(text, 0);
  for (;;) {
    // A value is due at `at`.
    const first = text[at];
    if (first === '[' || first === '{') {
      const close = first === '[' ? ']' : '}';
      at = skipBlank(text, at + 1);
      if (text[at] === close) at++;
      else {
        open.push(close);
        if (close === ']') continue;
        const key = readKey(text, at);
        if (key.fault) return key.at;
        at = key.at;
        continue;
      }
    } else {
      const scalar = readScalar(text, at);
      if (scalar.fault) return scalar.at;
      at = scalar.at;
    }
    // A value has ended: close what it ends, until another value is due or the text is over.
    for (;;) {
      at = skipBlank(text, at);
      const close = open.at(-1);
      if (close === undefined) return at === text.length ? null : at;
      if (text[at] === close) {
        open.pop();
        at++;
        continue;
      }
      if (text[at] !== ',') return at;
      at = skipBlank(text, at + 1);
      if (close === '}') {
        const key = readKey(text, at);
        if (key.fault) return key.at;
        at = key.at;
      }
      break;
    }
  }
}

/** Line and column (both from 1) of an offset; a line ends with LF, CR LF or CR. */
export function lineAndColumn(text: string, offset: number): { line: number; column: number } {
  let line = 1;
  let start = 0;
  for (let at = 0; at < offset; at++) {
    const code = text.charCodeAt(at);
    if (code === 0x0a || (code === 0x0d && text.charCodeAt(at + 1) !== 0x0a)) {
      line++;
      start = at + 1;
    }
  }
  return { line, column: offset - start + 1 };
}

interface Step {
  readonly at: number;
  readonly fault: boolean;
}

function skipBlank(text: string, from: number): number {
  let at = from;
  while (text[at] === ' ' || text[at] === '\n' || text[at] === '\r' || text[at] === '\t') at++;
  return at;
}

/** A key with its colon and the blanks after it. */
function readKey(text: string, from: number): Step {
  if (text[from] !== '"') return { at: from, fault: true };
  const key = readString(text, from);
  if (key.fault) return key;
  const at = skipBlank(text, key.at);
  return text[at] === ':' ? { at: skipBlank(text, at + 1), fault: false } : { at, fault: true };
}

function readScalar(text: string, from: number): Step {
  const first = text[from];
  if (first === '"') return readString(text, from);
  if (first === 't') return readWord(text, from, 'true');
  if (first === 'f') return readWord(text, from, 'false');
  if (first === 'n') return readWord(text, from, 'null');
  return readNumber(text, from);
}

function readWord(text: string, from: number, word: string): Step {
  for (let i = 0; i < word.length; i++) if (text[from + i] !== word[i]) return { at: from + i, fault: true };
  return { at: from + word.length, fault: false };
}

function readString(text: string, from: number): Step {
  for (let at = from + 1; at < text.length; at++) {
    const char = text[at]!;
    if (char === '"') return { at: at + 1, fault: false };
    if (char < ' ') return { at, fault: true };
    if (char !== '\\') continue;
    at++;
    if (text[at] === 'u') {
      for (let i = 0; i < 4; i++) {
        at++;
        if (!/^[0-9a-fA-F]$/.test(text[at] ?? '')) return { at: Math.min(at, text.length), fault: true };
      }
    } else if (!/^["\\/bfnrt]$/.test(text[at] ?? '')) return { at: Math.min(at, text.length), fault: true };
  }
  return { at: text.length, fault: true };
}

function readNumber(text: string, from: number): Step {
  let at = from;
  if (text[at] === '-') at++;
  if (!isDigit(text[at])) return { at, fault: true };
  at = text[at] === '0' ? at + 1 : skipDigits(text, at);
  if (text[at] === '.') {
    at++;
    if (!isDigit(text[at])) return { at, fault: true };
    at = skipDigits(text, at);
  }
  if (text[at] === 'e' || text[at] === 'E') {
    at++;
    if (text[at] === '+' || text[at] === '-') at++;
    if (!isDigit(text[at])) return { at, fault: true };
    at = skipDigits(text, at);
  }
  return { at, fault: false };
}

const isDigit = (char: string | undefined): boolean => char !== undefined && char >= '0' && char <= '9';

function skipDigits(text: string, from: number): number {
  let at = from;
  while (isDigit(text[at])) at++;
  return at;
}

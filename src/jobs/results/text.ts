/**
 * The text of a result for machines: JSON with one record a line, and with every character that could steer a terminal
 * or turn its reading direction written as an escape.
 */
export function resultText(result: Readonly<Record<string, unknown>>): string {
  const parts = Object.entries(result).map(
    ([key, value]) =>
      `${JSON.stringify(key)}:${Array.isArray(value) ? listText(value) : JSON.stringify(value)}`,
  );
  return `{\n${parts.join(',\n')}\n}\n`.replace(UNSAFE, escaped);
}

const listText = (items: readonly unknown[]): string =>
  items.length === 0 || typeof items[0] !== 'object'
    ? JSON.stringify(items)
    : `[\n${items.map((item) => JSON.stringify(item)).join(',\n')}\n]`;

/** What JSON.stringify lets through: the second block of controls, direction marks, separators. */
const UNSAFE = /(?!\n)[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu;

const escaped = (char: string): string =>
  Array.from(
    { length: char.length },
    (_, at) => `\\u${char.charCodeAt(at).toString(16).padStart(4, '0')}`,
  ).join('');

/** A number with at most `places` decimals, without trailing zeros, point as the decimal mark. */
export function numberInWords(value: number, places: number): string {
  const rounded = Number(value.toFixed(places));
  return String(rounded === 0 ? 0 : rounded);
}

/** '1 pin', '7 pins'. */
export const countInWords = (many: number, one: string, more = `${one}s`): string =>
  `${many} ${many === 1 ? one : more}`;

/** 'a', 'a and b', 'a, b and c'. */
export const listInWords = (words: readonly string[]): string =>
  words.length <= 1 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

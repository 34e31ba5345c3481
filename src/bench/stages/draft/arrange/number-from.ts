/** A number as typed, with either decimal mark; null where it is none, or out of its range. */
export function numberFrom(text: string, least: number, most: number): number | null {
  const typed = text.trim().replace(',', '.');
  if (!/^-?\d{1,6}(?:\.\d{1,6})?$/.test(typed)) return null;
  const number = Number(typed);
  return number >= least && number <= most ? number : null;
}

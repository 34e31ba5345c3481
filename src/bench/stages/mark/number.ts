/** Why a number cannot stand on a pattern, or null. */
export function refuseNumber(typed: string): string | null {
  if (!/^[-+]?\d+$/.test(typed)) return 'Type a whole number, such as 12.';
  return Math.abs(Number(typed)) <= 1_000_000 ? null : 'A number has at most six figures.';
}

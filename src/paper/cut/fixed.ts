/** A length for a machine's file: always with so many decimals, a point before them, and never an exponent. */
export function fixed(value: number, digits = 4): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? (0).toFixed(digits) : text;
}

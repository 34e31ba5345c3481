/** A sheet of paper by name, upright (width at most height), in millimetres. */
export interface PaperSize {
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

/** Every size known by name: ISO 216 A and B, ISO 269 C, and the sizes of ANSI/ASME Y14.1 with US Legal. */
export const paperSizes: readonly PaperSize[] = [
  ...isoSeries('A', 841, 1189),
  ...isoSeries('B', 1000, 1414),
  ...isoSeries('C', 917, 1297),
  { name: 'Letter', width: 215.9, height: 279.4 },
  { name: 'Legal', width: 215.9, height: 355.6 },
  { name: 'Tabloid', width: 279.4, height: 431.8 },
  { name: 'ANSI C', width: 431.8, height: 558.8 },
  { name: 'ANSI D', width: 558.8, height: 863.6 },
  { name: 'ANSI E', width: 863.6, height: 1117.6 },
];

/** The size of that name, whatever its capitals, spaces or dashes; undefined where nobody knows it. */
export function paperNamed(name: string): PaperSize | undefined {
  const wanted = plain(name);
  return paperSizes.find((size) => plain(size.name) === (otherNames.get(wanted) ?? wanted));
}

/** The same paper laid the other way: width and height exchanged. */
export const turned = (paper: PaperSize): PaperSize => ({
  name: paper.name,
  width: paper.height,
  height: paper.width,
});

const otherNames: ReadonlyMap<string, string> = new Map([
  ['usletter', 'letter'],
  ['ansia', 'letter'],
  ['ansib', 'tabloid'],
  ['ledger', 'tabloid'],
]);

const plain = (name: string): string => name.toLowerCase().replace(/[\s_-]+/g, '');

/**
 * Each ISO size is the one before cut in half across its longer side, rounded down to a whole millimetre
 * (ISO 216:2007, clause 4; the rounding is from memory and checked against published tables in the tests).
 */
function isoSeries(letter: string, width: number, height: number): PaperSize[] {
  const sizes: PaperSize[] = [];
  for (let step = 0; step <= 10; step++) {
    sizes.push({ name: `${letter}${step}`, width, height });
    [width, height] = [Math.floor(height / 2), width];
  }
  return sizes;
}

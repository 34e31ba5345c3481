import type { Region } from '#base/picture/regions.ts';

/** A line of lettering: its box in pixels, and how many letters it has. */
export interface LetteringLine extends Omit<Region, 'area'> {
  readonly letters: number;
}

/**
 * Finds lines of lettering, level or upright: patches of ink of about one size in a row, closer to each other
 * than they are tall. `pinsIn` says how many likely pins lie in a patch: pieces of the pattern have about one
 * each, letters hardly any.
 */
export function letteringLines(
  regions: readonly Region[],
  dot: number,
  pinsIn: (region: number) => number,
): LetteringLine[] {
  const letters: Letter[] = [];
  regions.forEach((region, index) => {
    const long = Math.max(region.right - region.left, region.bottom - region.top) + 1;
    if (long < 1.3 * dot || long > 16 * dot || region.area < 0.5 * dot * dot) return;
    letters.push({ ...region, pins: pinsIn(index) });
  });
  return [...rowsOf(letters), ...rowsOf(letters.map(turned)).map(turnedBack)];
}

interface Letter extends Region {
  readonly pins: number;
}

const turned = ({ left, top, right, bottom, area, pins }: Letter): Letter => ({
  left: top,
  top: left,
  right: bottom,
  bottom: right,
  area,
  pins,
});

const turnedBack = ({ left, top, right, bottom, letters }: LetteringLine): LetteringLine => ({
  left: top,
  top: left,
  right: bottom,
  bottom: right,
  letters,
});

function rowsOf(letters: readonly Letter[]): LetteringLine[] {
  const sorted = [...letters].sort((a, b) => a.left - b.left);
  const lines: {
    left: number;
    top: number;
    right: number;
    bottom: number;
    letters: number;
    last: Region;
    pins: number;
    bars: number;
  }[] = [];
  const open = new Set<number>();
  for (const letter of sorted) {
    let joined = -1;
    for (const line of open) {
      const { last } = lines[line]!;
      const tall = Math.max(heightOf(last), heightOf(letter));
      const gap = letter.left - last.right;
      if (gap > 40 + 2 * tall) {
        if (gap > 400) open.delete(line);
        continue;
      }
      const short = Math.min(heightOf(last), heightOf(letter));
      const overlap = Math.min(last.bottom, letter.bottom) - Math.max(last.top, letter.top) + 1;
      if (gap > 1.2 * tall || overlap < 0.5 * short || tall > 2.4 * short) continue;
      joined = line;
      break;
    }
    if (joined < 0) {
      open.add(lines.length);
      lines.push({ ...letter, letters: 1, bars: isBar(letter), last: letter });
      continue;
    }
    const line = lines[joined]!;
    line.left = Math.min(line.left, letter.left);
    line.top = Math.min(line.top, letter.top);
    line.right = Math.max(line.right, letter.right);
    line.bottom = Math.max(line.bottom, letter.bottom);
    line.letters++;
    line.pins += letter.pins;
    line.bars += isBar(letter);
    line.last = letter;
  }
  return lines.filter(
    (line) =>
      line.letters >= 3 && line.pins <= 0.3 * line.letters && line.bars <= 0.5 * line.letters && isLong(line),
  );
}

const heightOf = (region: Region): number => region.bottom - region.top + 1;

/** 1 for a patch like a single stroke: a row of only those is hatching or a broken line. */
function isBar(region: Region): number {
  const across = region.right - region.left + 1;
  const down = heightOf(region);
  return Math.max(across, down) > 4 * Math.min(across, down) ? 1 : 0;
}

const isLong = (line: Omit<Region, 'area'>): boolean =>
  line.right - line.left + 1 >= 1.5 * (line.bottom - line.top + 1);

/** How many letters the line has that a place belongs to: in it, over it as an accent, or after it as a stop. */
export function lettersAt(lines: readonly LetteringLine[], column: number, row: number): number {
  let letters = 0;
  for (const line of lines) {
    const across = line.right - line.left;
    const down = line.bottom - line.top;
    const tall = Math.min(across, down);
    const along = 0.6 * tall;
    const aside = 0.4 * tall;
    const x = across >= down ? along : aside;
    const y = across >= down ? aside : along;
    if (column < line.left - x || column > line.right + x || row < line.top - y || row > line.bottom + y)
      continue;
    letters = Math.max(letters, line.letters);
  }
  return letters;
}

const SIDE = 16;

/** Some browsers add a little noise, in which dots are seen all the same; others give nothing of the picture at all. */
const MOST_NOISE = 16;

/** Whether this browser gives made-up pixels where a page asks for those of a canvas. */
export function pixelsAreWithheld(): boolean {
  const context = new OffscreenCanvas(SIDE, SIDE).getContext('2d', { alpha: false })!;
  const levelAt = (x: number, y: number) => ((x + y) % 2) * 128 + 4 * x;
  for (let y = 0; y < SIDE; y++) {
    for (let x = 0; x < SIDE; x++) {
      const level = levelAt(x, y);
      context.fillStyle = `rgb(${level} ${level} ${level})`;
      context.fillRect(x, y, 1, 1);
    }
  }
  const { data } = context.getImageData(0, 0, SIDE, SIDE);
  let away = 0;
  for (let at = 0; at < SIDE * SIDE; at++) {
    away += Math.abs(data[4 * at]! - levelAt(at % SIDE, Math.floor(at / SIDE)));
  }
  return away / (SIDE * SIDE) > MOST_NOISE;
}

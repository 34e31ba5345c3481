import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { expect, test } from 'vitest';
import type { Point } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { inverted } from '#base/picture/inverted.ts';
import { judgeCard } from '#craft/light/judge.ts';
import type { Judgement } from '#craft/light/judgement.ts';
import { findSpots } from '#craft/light/spots.ts';
import { describeWith, outsideFile, outsidePath } from '../../support/outside.ts';

describeWith(
  ['gerbv', 'drill-file'],
  'a drill file drawn by gerbv, as an ideal card held to the light',
  () => {
    const { holes, diameters } = drillFile(
      readFileSync(outsidePath('drill-file', 'ThruHolePlated.ncd'), 'utf8'),
    );

    test.each([
      ['as it is', 0, false],
      ['turned', 143, false],
      ['turned over', 20, true],
    ])('%s: all 94 holes are seen, in their places and as wide as their drills', async (_, turn, flop) => {
      expect(holes).toHaveLength(94);
      const lit = sharp(drawn()).flop(flop).rotate(turn, { background: '#000000' });
      const { fit, pins, missing, extra, offCentre, notes } = judged(await pictureOf(lit), holes);
      expect([missing, extra, offCentre, notes]).toEqual([[], [], [], []]);
      expect(fit.mirrored).toBe(flop);
      expect(fit.rms).toBeLessThan(0.02);
      for (const { index, dx, dy, diameter } of pins) {
        // gerbv itself draws holes up to 0.037 mm (0.88 pixels) off the places in the file
        expect(Math.hypot(dx!, dy!)).toBeLessThan(0.05);
        expect(Math.abs(diameter! - diameters[index]!)).toBeLessThan(0.04);
      }
    });

    function drawn(): Buffer {
      const folder = mkdtempSync(join(tmpdir(), 'pinlight-drill-'));
      try {
        const file = join(folder, 'card.png');
        const look = ['-b', '#000000', '-f', '#FFFFFFFF', '-D', '600', '-B', '20'];
        spawnSync('gerbv', [
          '-x',
          'png',
          ...look,
          '-o',
          file,
          outsidePath('drill-file', 'ThruHolePlated.ncd'),
        ]);
        return readFileSync(file);
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    }
  },
);

/** Rows 8 by 11, every second place filled: the asymmetric circle grid of the OpenCV calibration pages. */
const circleGrid = (pitch: number): Point[] =>
  Array.from({ length: 88 }, (_, k) => ({ i: k % 11, j: Math.floor(k / 11) }))
    .filter(({ i, j }) => (i + j) % 2 === 0)
    .map(({ i, j }) => ({ x: i * pitch, y: j * pitch }));

describeWith(['dot-sheets'], 'the circle grids of the OpenCV calibration pages', () => {
  test('the drawn sheet: 44 dots exactly on a pitch of 20 mm', async () => {
    const picture = await pictureOf(sharp(outsideFile('dot-sheets', 'acircles_pattern.png')));
    const { fit, missing, extra, offCentre, oval } = judged(picture, circleGrid(20));
    expect([missing, extra, offCentre, oval]).toEqual([[], [], [], []]);
    expect(fit.holes).toBe('dark');
    expect(fit.rms).toBeLessThan(0.01);
    // The file states 5906 pixels a metre.
    expect(fit.pixelsPerMm).toBeCloseTo(5.906, 2);
    expect(Math.abs(fit.holeDiameter - 15.99)).toBeLessThan(0.3);
  });

  test('the photo: the white sheet is matched under a tape measure, and what stays open is said', async () => {
    const photo = sharp(outsideFile('dot-sheets', 'dualCircles.jpg'));
    // a tenth of the true pitch of 16.3 mm, so that the limits in mm are those of a card and not of a poster
    const { fit, pins, notes } = judged(await pictureOf(photo), circleGrid(1.63));
    expect(fit.holes).toBe('light');
    expect(fit.pixelsPerMm).toBeGreaterThan(9);
    expect(fit.pixelsPerMm).toBeLessThan(11);
    // Of 44 dots the tape covers half of each of eight and a drawn line runs through five of the outermost column, so
    // that with what is left the grid may as well lie one column further over.
    const inPlace = pins.filter(({ dx, dy }) => dx !== null && Math.hypot(dx, dy!) < 0.16);
    expect(inPlace.length).toBeGreaterThanOrEqual(31);
    expect(notes.map(({ kind }) => kind)).toContain('ambiguous');
  });
});

describeWith(['white-holes'], 'pic1.png of the OpenCV examples: seven white holes in a black plate', () => {
  test('each is seen in its place and of its size', async () => {
    const { spots } = findSpots(inverted(await pictureOf(sharp(outsideFile('white-holes', 'pic1.png')))));
    // Centres and pixel counts as cv2.connectedComponentsWithStats gives them at a threshold of 128.
    const known = [
      [107.8, 43.8],
      [154.8, 53.8],
      [82.8, 60.8],
      [183.8, 75.8],
      [125.8, 78.8],
      [150.8, 88.8],
      [95.8, 103.8],
    ] as const;
    for (const [column, row] of known) {
      const spot = spots.find((one) => Math.hypot(one.column - column, one.row - row) < 0.5);
      expect(spot, `${column} ${row}`).toBeDefined();
      expect(Math.abs(spot!.area - 108)).toBeLessThan(11);
    }
  });
});

function judged(picture: GreyPicture, pins: readonly Point[]): Judgement {
  const result = judgeCard(picture, pins);
  if (!result.ok) throw new Error(JSON.stringify(result.trouble));
  return result.value;
}

async function pictureOf(image: Sharp): Promise<GreyPicture> {
  const { data, info } = await image
    .flatten({ background: '#000000' })
    .toColourspace('b-w')
    .extractChannel(0)
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, grey: new Uint8Array(data) };
}

/** Tools and holes of a drill file in metric units of 0.001 mm (M71), y up as such files have it, turned down here. */
function drillFile(text: string): { holes: Point[]; diameters: number[] } {
  const tools = new Map<string, number>();
  const holes: Point[] = [];
  const diameters: number[] = [];
  let [x, y, diameter, inBody] = [0, 0, 0, false];
  for (const line of text.split(/\r?\n/u)) {
    const tool = /^(T\d+)(?:C(\d*\.\d+))?$/u.exec(line);
    if (tool?.[2]) tools.set(tool[1]!, Number(tool[2]));
    else if (tool) diameter = tools.get(tool[1]!) ?? diameter;
    if (line === '%') inBody = true;
    const place = /^(?:X(-?\d+))?(?:Y(-?\d+))?$/u.exec(line);
    if (!inBody || line === '' || place === null) continue;
    if (place[1] !== undefined) x = Number(place[1]) / 1000;
    if (place[2] !== undefined) y = Number(place[2]) / 1000;
    holes.push({ x, y: -y });
    diameters.push(diameter);
  }
  return { holes, diameters };
}

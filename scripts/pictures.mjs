// Makes the pictures of README.md and docs/ anew from the examples, with the program as it is now.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { imported } from './bundle.mjs';

const home = fileURLToPath(new URL('..', import.meta.url));
const images = join(home, 'docs', 'images');
const example = join(home, 'examples', 'rosehip-edging.jpg');
const work = mkdtempSync(join(tmpdir(), 'pinlight-pictures-'));
const at = (/** @type {string} */ name) => join(work, name);

const SMALL = { palette: true, colours: 64 };
const about = [
  '--name',
  'Rosehip edging',
  '--maker',
  'the Pinlight project',
  '--permission',
  'use it freely',
];

try {
  mkdirSync(images, { recursive: true });
  pinlight('ready', example, '-o', at('ready'), ...about);
  const pattern = at('ready/07-pattern-straightened.pinlight');
  const print = ['print', pattern, '--way', 'through', '--markings', 'paper', '--dpi', '110'];
  pinlight(...print, '--paper', 'A4', '-o', at('a4.png'));
  pinlight(...print, '--paper', 'A5', '-o', at('a5.png'));
  await keep(at('ready/02-before-and-after.png'), 'before-and-after.png');
  await keep(at('ready/05-under-film-as-it-will-look.png'), 'under-film.png');
  await row(
    ['dots-a1', 'marking-guide-a1', 'pricking-guide'].map((page) => at(`a4-${page}.png`)),
    'through.png',
  );
  await row(
    ['cover', 'dots-a1', 'dots-b1'].map((page) => at(`a5-${page}.png`)),
    'sheets.png',
  );
  pinlight(
    'light',
    join(home, 'examples', 'rosehip-edging.json'),
    join(home, 'examples', 'rosehip-card.jpg'),
    '-o',
    at('light.png'),
    '--dpi',
    '110',
  );
  await row([at('light-card-picture.png'), at('light-reprick-map-a1.png')], 'light.png');
  const threads = ['--threads', join(home, 'examples', 'threads.json')];
  const size = ['size', join(home, 'examples', 'rosehip-edging.json'), ...threads];
  pinlight(...size, '--table', at('size.png'), '--paper', 'A4');
  await row([at('size-thread-table.png'), at('size-cloth-picture.png')], 'size.png');
  await paperToCard(at('ready/05-under-film-as-it-will-look.png'));
  const { makeGallery } = await imported('test/support/examples/gallery.ts');
  await makeGallery(images);
  screensOfTheBench();
} finally {
  rmSync(work, { recursive: true, force: true });
}

/** @param {...string} args */
function pinlight(...args) {
  const run = spawnSync(process.execPath, [join(home, 'bin/pinlight.mjs'), ...args], { stdio: 'inherit' });
  if (run.status !== 0 && run.status !== 1) throw new Error(`pinlight ${args[0]} ended with ${run.status}`);
}

/** @param {string} file @param {string} name */
async function keep(file, name) {
  await sharp(file).resize({ width: 900 }).png(SMALL).toFile(join(images, name));
}

/** Pages side by side on a grey table. @param {string[]} files @param {string} name */
async function row(files, name) {
  const height = 620;
  const gap = 16;
  const pages = await Promise.all(
    files.map((file) =>
      sharp(file).resize({ height }).flatten({ background: '#ffffff' }).toBuffer({ resolveWithObject: true }),
    ),
  );
  let left = gap;
  const placed = pages.map(({ data, info }) => {
    const page = { input: data, left, top: gap };
    left += info.width + gap;
    return page;
  });
  await sharp({ create: { width: left, height: height + 2 * gap, channels: 3, background: '#d9d5cf' } })
    .composite(placed)
    .png(SMALL)
    .toFile(join(images, name));
}

/** The scan as it came, and beside it the sheet as it will lie on the card under film. @param {string} sheet */
async function paperToCard(sheet) {
  const size = { width: 520, height: 740 };
  const scan = await sharp(example)
    .resize({ ...size, fit: 'cover' })
    .toBuffer();
  const { width = 0, height = 0 } = await sharp(sheet).metadata();
  const card = { left: 0.2, top: 0.1, width: 0.62, height: 0.78 };
  const ready = await sharp(sheet)
    .extract({
      left: Math.round(card.left * width),
      top: Math.round(card.top * height),
      width: Math.round(card.width * width),
      height: Math.round(card.height * height),
    })
    .resize({ ...size, fit: 'contain', background: '#ffffff' })
    .toBuffer();
  await sharp({ create: { width: 1088, height: 772, channels: 3, background: '#d9d5cf' } })
    .composite([
      { input: scan, left: 16, top: 16 },
      { input: ready, left: 552, top: 16 },
    ])
    .jpeg({ quality: 85 })
    .toFile(join(images, 'paper-to-card.jpg'));
}

/** The pictures of the bench are made by the test that holds them to it. */
function screensOfTheBench() {
  const vitest = join(home, 'node_modules', 'vitest', 'vitest.mjs');
  const { status } = spawnSync(process.execPath, [vitest, 'run', 'test/bench/docs-pictures.test.ts'], {
    cwd: home,
    stdio: 'inherit',
    env: { ...process.env, PICTURES: 'renew' },
  });
  if (status !== 0) throw new Error('the pictures of the bench could not be made');
}

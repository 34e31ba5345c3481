/**
 * The whole command as people run it: CPU seconds and most memory of each verb in a process of its own, beside an empty
 * Node process in the same run. Pictures are drawn from the example's recipe; hostile files are made on the spot.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import sharp from 'sharp';

const folder = mkdtempSync(join(tmpdir(), 'pinlight-bench-'));
const at = (name: string): string => join(folder, name);
const usage = at('usage.json');

// Asks the process itself as it ends, so that no other program is needed.
const gauge = at('gauge.mjs');
writeFileSync(
  gauge,
  `import { writeFileSync } from 'node:fs';
process.on('exit', () => writeFileSync(${JSON.stringify(usage)}, JSON.stringify(process.resourceUsage())));`,
);

interface Cost {
  readonly code: number | null;
  readonly cpu: number;
  readonly megabytes: number;
}

function run(args: readonly string[]): Cost {
  const { status } = spawnSync(process.execPath, ['--import', pathToFileURL(gauge).href, ...args], {
    stdio: 'ignore',
  });
  const { userCPUTime, systemCPUTime, maxRSS } = JSON.parse(readFileSync(usage, 'utf8'));
  return { code: status, cpu: (userCPUTime + systemCPUTime) / 1e6, megabytes: maxRSS / 1024 };
}

const empty = run(['-e', '0']);
const line = (name: string, { code, cpu, megabytes }: Cost): void => {
  const above = megabytes - empty.megabytes;
  console.log(
    `${name.padEnd(44)} code ${code}  ${cpu.toFixed(2).padStart(6)} s CPU  ${megabytes.toFixed(0).padStart(5)} MB (${above.toFixed(0)} above an empty Node)`,
  );
};
const pinlight = (name: string, ...args: string[]): void =>
  line(name, run(['dist/cli/pinlight.mjs', ...args]));

try {
  const example = 'examples/rosehip-edging.jpg';
  // An A4 page of the same marks: the example laid out four times.
  const { data, info } = await sharp(example).raw().toBuffer({ resolveWithObject: true });
  const tile = (times: number) =>
    sharp(data, { raw: { width: info.width, height: info.height, channels: info.channels } })
      .extend({
        right: info.width * (times - 1),
        bottom: info.height * (times - 1),
        extendWith: 'repeat',
      })
      .withMetadata({ density: 300 })
      .jpeg({ quality: 85 })
      .toFile(at(`page-${times}.jpg`));
  const pages = [await tile(2), await tile(4)];
  writeFileSync(at('half.jpg'), readFileSync(example).subarray(0, 100_000));
  await sharp({
    create: { width: 16_000, height: 16_000, channels: 3, background: '#fff' },
    limitInputPixels: false,
  })
    .png()
    .toFile(at('huge.png'));
  writeFileSync(at('deep.json'), '['.repeat(5_000_000));
  const million = Array.from(
    { length: 1_000_000 },
    (_, i) => `{"x":${(i % 1000) * 2},"y":${Math.floor(i / 1000) * 2}}`,
  );
  writeFileSync(at('million.json'), `{"pins":[${million.join(',')}]}`);

  line('an empty Node process', empty);
  pinlight('--version', '--version');
  pinlight('trace, A5 at 300 dpi (4.3 megapixels)', 'trace', example, '-o', at('a5.pinlight'));
  pages.forEach(({ width, height }, index) => {
    const name = `page-${index === 0 ? 2 : 4}`;
    const size = ((width * height) / 1e6).toFixed(1);
    pinlight(
      `trace, ${width} x ${height} (${size} megapixels)`,
      'trace',
      at(`${name}.jpg`),
      '-o',
      at(`${name}.json`),
    );
  });
  pinlight('true', 'true', at('a5.pinlight'), '-o', at('trued.pinlight'));
  pinlight('look', 'look', at('trued.pinlight'), '-o', at('findings.txt'));
  pinlight(
    'print',
    'print',
    at('trued.pinlight'),
    '-o',
    at('sheets.pdf'),
    '--way',
    'through',
    '--paper',
    'A4',
  );
  pinlight('ready, all of it', 'ready', example, '-o', at('ready'));
  console.log('Refused:');
  pinlight('trace, a picture that breaks off', 'trace', at('half.jpg'));
  pinlight('trace, a picture of 256 megapixels', 'trace', at('huge.png'));
  pinlight('look, five million brackets', 'look', at('deep.json'));
  pinlight('look, a million pins', 'look', at('million.json'));
} finally {
  rmSync(folder, { recursive: true, force: true });
}

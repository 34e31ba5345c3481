/**
 * A PDF of 20,000 pins on one sheet: time and size of ours against the plain way of the same PDF library, which draws
 * each dot as a path of its own, in the same run; and how the whole print (sheets and PDF) grows with the pins.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { seededRandom } from '#base/random.ts';
import { mmToPoints } from '#base/units/length.ts';
import { paperNamed } from '#base/units/paper.ts';
import type { InkMark } from '#paper/drawing/mark.ts';
import { writePdf } from '#paper/pdf/write.ts';
import { printSheets } from '#paper/sheet/print.ts';
import { openTypeface } from '#paper/type/typeface.ts';
import type { Pattern } from '#pattern/pattern.ts';

const require = createRequire(join(process.cwd(), 'package.json'));
const font = (name: string): Uint8Array => new Uint8Array(readFileSync(require.resolve(name)));
const typeface = openTypeface({
  regular: font('@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf'),
  bold: font('@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf'),
  fallback: font('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'),
});
const paper = paperNamed('A4')!;
const ROUNDS = 7;
const PINS = 20_000;
const SEED = 20_261_125;
const meta = { title: 'Bench' };

const dots = dotsOn(PINS);
const ours = await best(() => writePdf([{ paper, marks: dots }], { typeface, meta }));
const peer = await best(() => onePathEach(dots));
console.log(`${PINS} dots, one A4 sheet       CPU ms        KB`);
console.log(`moved constant path (ours)  ${ours.ms.toFixed(0).padStart(8)}  ${kilobytes(ours.bytes)}`);
console.log(`pdfkit, one path each       ${peer.ms.toFixed(0).padStart(8)}  ${kilobytes(peer.bytes)}`);
console.log(
  `ours / peer                 ${(ours.ms / peer.ms).toFixed(2).padStart(8)}  ${(ours.bytes / peer.bytes).toFixed(2).padStart(8)}\n`,
);

console.log('whole print, A3, through    CPU ms        KB   us a pin');
for (const pins of [2_000, 20_000]) {
  const pattern = lattice(pins);
  const whole = await best(async () => {
    const printed = printSheets(pattern, {
      typeface,
      way: 'through',
      paper: paperNamed('A3')!,
      revision: 'r1',
    });
    if (!printed.ok) throw new Error(printed.trouble.kind);
    return writePdf(printed.value.sheets, { typeface, meta });
  });
  const each = ((whole.ms * 1000) / pins).toFixed(1).padStart(9);
  console.log(
    `${String(pins).padEnd(28)}${whole.ms.toFixed(0).padStart(6)}  ${kilobytes(whole.bytes)}  ${each}`,
  );
}

/** The least CPU time of several runs, since everything else on the machine only ever adds to it. */
async function best(make: () => Promise<Uint8Array>): Promise<{ ms: number; bytes: number }> {
  let ms = Number.POSITIVE_INFINITY;
  let bytes = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const before = process.cpuUsage();
    bytes = (await make()).length;
    const { user, system } = process.cpuUsage(before);
    ms = Math.min(ms, (user + system) / 1000);
  }
  return { ms, bytes };
}

function kilobytes(bytes: number): string {
  return (bytes / 1024).toFixed(0).padStart(8);
}

function dotsOn(count: number): InkMark[] {
  const random = seededRandom(SEED);
  return Array.from({ length: count }, () => ({
    kind: 'disc',
    role: 'hole',
    at: { x: 10 + 190 * random(), y: 10 + 277 * random() },
    diameter: 0.6,
    colour: '#000000',
  }));
}

/** The peer: every dot by the library's own circle and fill. */
async function onePathEach(marks: readonly InkMark[]): Promise<Uint8Array> {
  const { default: Document } = await import('pdfkit');
  // biome-ignore lint/suspicious/noExplicitAny: the library's own drawing calls are not among our declarations
  const pdf: any = new Document({
    autoFirstPage: false,
    pdfVersion: '1.7',
    compress: true,
    displayTitle: true,
    font: null,
    info: { Title: 'Bench', CreationDate: new Date(0) },
  });
  const chunks: Uint8Array[] = [];
  const ended = new Promise<void>((resolve) => {
    pdf.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    pdf.on('end', resolve);
  });
  pdf.addPage({ size: [mmToPoints(paper.width), mmToPoints(paper.height)], margin: 0 });
  for (const mark of marks) {
    if (mark.kind !== 'disc') continue;
    pdf.circle(mmToPoints(mark.at.x), mmToPoints(mark.at.y), mmToPoints(mark.diameter / 2)).fill('#000000');
  }
  pdf.end();
  await ended;
  return new Uint8Array(Buffer.concat(chunks));
}

/** A lattice at 45 degrees with a line from each pin to the next: 2 mm from pin to pin. */
function lattice(count: number): Pattern {
  const columns = 120;
  const pins = Array.from({ length: count }, (_, k) => {
    const row = Math.floor(k / columns);
    return { id: `p${k}`, x: (k % columns) * 2 + (row % 2), y: row };
  });
  return {
    unit: 'mm',
    about: { name: 'Bench', maker: 'A maker', source: 'a source', permission: 'any' },
    pins,
    runs: [],
    marks: pins
      .slice(1)
      .flatMap((pin, k) =>
        (k + 1) % columns === 0
          ? []
          : [{ id: `m${k}`, kind: 'line' as const, from: { pin: `p${k}` }, to: { pin: pin.id } }],
      ),
    areas: [],
    sizes: {},
    scale: { from: 'drafted' },
  };
}

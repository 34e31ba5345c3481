import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { normal, seededRandom } from '#base/random.ts';

const SEED = 20_240_301;

/** A pattern of so many pins on a shaken net, with a line to the row above from each where `lines` are wanted. */
export function largePattern(pins: number, lines = false) {
  const random = seededRandom(SEED);
  const across = Math.round(Math.sqrt(pins / 2));
  const places = Array.from({ length: pins }, (_, at) => {
    const [column, row] = [at % across, Math.floor(at / across)];
    return {
      id: `p${at}`,
      x: 5 * column + 2.5 * (row % 2) + 0.05 * normal(random),
      y: 2.5 * row + 0.05 * normal(random),
    };
  });
  const marks = lines
    ? places.slice(across).map(({ id }, at) => ({
        ...{ id: `m${at}`, kind: 'line', from: { pin: id } },
        to: { pin: places[at]!.id },
      }))
    : [];
  return { pins: places, marks };
}

/** A file on the disk for as long as `work` goes on: the browser reads it beside the page, as when a person chooses it. */
export function withFile<Made>(
  name: string,
  content: string | Uint8Array,
  work: (file: string) => Promise<Made>,
): Promise<Made> {
  const folder = mkdtempSync(join(tmpdir(), 'pinlight-bench-'));
  const file = join(folder, name);
  writeFileSync(file, content);
  return work(file).finally(() => rmSync(folder, { recursive: true }));
}

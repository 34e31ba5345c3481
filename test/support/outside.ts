import { accessSync, constants, existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, test } from 'vitest';
import data from '../outside/data.json' with { type: 'json' };
import tools from '../outside/tools.json' with { type: 'json' };

type Tool =
  | 'pdftotext'
  | 'qpdf'
  | 'mutool'
  | 'gs'
  | 'rsvg-convert'
  | 'gerbv'
  | 'paperconf'
  | 'unzip'
  | 'ezdxf'
  | 'units'
  | 'pint-convert';
type DataSet =
  | 'dot-sheets'
  | 'png-suite'
  | 'go-pictures'
  | 'drill-file'
  | 'white-holes'
  | 'camera-files'
  | 'drilling-tour'
  | 'drill-board';

/**
 * A group of tests that read with independent programs or from published data (both listed in `test/outside`).
 * Where one is missing the group is skipped and its title says why; in continuous integration that is a failure.
 */
export function describeWith(needs: readonly (Tool | DataSet)[], title: string, body: () => void): void {
  const missing = needs.filter((need) => !isHere(need));
  if (missing.length === 0) {
    describe(title, body);
    return;
  }
  const why = `${title} (needs ${missing.map(describeNeed).join(' and ')})`;
  if (process.env.CI && process.env.CI !== 'false') {
    test(why, () => {
      throw new Error(`Not on this machine: ${missing.join(', ')}`);
    });
  } else {
    // The body of a skipped group is run to collect its tests, and would read what is not there.
    test.skip(why, () => {});
  }
}

/** The path of one file of a published data set. */
export const outsidePath = (set: DataSet, file: string): string => join(folderOf(set), file);

/** The bytes of one file of a published data set. */
export const outsideFile = (set: DataSet, file: string): Uint8Array =>
  new Uint8Array(readFileSync(outsidePath(set, file)));

const folderOf = (set: string): string =>
  fileURLToPath(new URL(`../../.cache/outside/${set}`, import.meta.url));

function isHere(need: string): boolean {
  return tools.some((tool) => tool.command === need) ? isOnPath(need) : existsSync(folderOf(need));
}

function isOnPath(command: string): boolean {
  return (process.env.PATH ?? '').split(delimiter).some((folder) => {
    try {
      accessSync(join(folder, command), constants.X_OK);
      return true;
    } catch {
      return false;
    }
  });
}

function describeNeed(need: string): string {
  const from = tools.find((tool) => tool.command === need) ?? data.find((set) => set.name === need);
  return `${need}, from the Debian package ${from?.package}`;
}

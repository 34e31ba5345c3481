import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { pinlight, useCommand } from '../support/cli.ts';

useCommand();

const home = new URL('../../', import.meta.url);
const pages = ['README.md', ...readdirSync(new URL('docs/', home)).map((name) => `docs/${name}`)].filter(
  (name) => name.endsWith('.md'),
);

/** The commands that the pages tell a reader to type, as their words. */
const commands = pages.flatMap((page) =>
  readFileSync(fileURLToPath(new URL(page, home)), 'utf8')
    .split('\n')
    .filter((line) => /^ {4}(npx )?pinlight [a-z]/.test(line))
    .map((line) => ({ page, line: line.trim().replace(/^npx /, '').replace(/ #.*$/, '') })),
);

const helpOf = new Map<string, string>();
async function help(verb: string): Promise<string> {
  if (!helpOf.has(verb)) {
    const run = await pinlight(verb === 'help' ? ['help'] : ['help', verb]);
    expect(run.code, `pinlight help ${verb}`).toBe(0);
    helpOf.set(verb, run.out);
  }
  return helpOf.get(verb)!;
}

describe('the commands on the pages', () => {
  test('are there', () => expect(commands.length).toBeGreaterThan(20));

  test.each(commands)('$page: $line', async ({ line }) => {
    const [, verb, ...words] = line.split(/\s+/);
    const known = await help(verb!);
    for (const word of words.filter((one) => /^--?[a-z]/.test(one))) {
      expect(known).toContain(word.replace(/=.*$/, ''));
    }
  });
});

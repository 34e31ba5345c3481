import type { Command } from 'commander';
import { MAX_LINE_LENGTH } from '#pattern/file/limits.ts';
import type { About, Pattern } from '#pattern/pattern.ts';
import { badOption } from './bad-option.ts';

/** The flags that say whose pattern it is; all of it is printed on every sheet. */
export type AboutFlags = {
  readonly [Flag in 'name' | 'maker' | 'source' | 'permission' | 'lace']?: About[Flag] | undefined;
};

export const addAboutOptions = (command: Command): Command =>
  command
    .option('--name <text>', 'what the pattern is called', lineOf('--name'))
    .option('--maker <text>', 'who made it', lineOf('--maker'))
    .option('--source <text>', 'where it comes from: a book, a print, a class', lineOf('--source'))
    .option('--permission <text>', 'what you are allowed to do with it', lineOf('--permission'))
    .option('--lace <text>', 'the kind of lace, in your own word', lineOf('--lace'));

const lineOf =
  (option: string) =>
  (text: string): string =>
    text.length <= MAX_LINE_LENGTH ? text : badOption(option, text, `at most ${MAX_LINE_LENGTH} letters`);

/** The pattern with what the flags say of it; what they do not say stays as it was. */
export function saidOf(pattern: Pattern, { name, maker, source, permission, lace }: AboutFlags): Pattern {
  const said = { name, maker, source, permission, lace };
  const given = Object.entries(said).filter(([, text]) => text !== undefined && text !== '');
  return given.length === 0
    ? pattern
    : { ...pattern, about: { ...pattern.about, ...Object.fromEntries(given) } };
}

import { MAX_LINE_LENGTH } from '#pattern/file/limits.ts';

/** What a picture's file is called, as a name for its pattern: 'spring-edging_2.jpg' is "spring edging 2". */
export function nameFromFile(file: string): string | undefined {
  const words = file
    .replace(/^.*[/\\]/, '')
    .replace(/\.[^.]{1,5}$/, '')
    .replace(/[-_\s]+/g, ' ')
    .trim();
  return words === '' ? undefined : words.slice(0, MAX_LINE_LENGTH);
}

/** What can be looked for of a design. */
export interface Findable {
  readonly name: string;
  readonly maker?: string | undefined;
  readonly lace?: string | undefined;
}

/** Whether every word sought stands in the name, the maker or the kind of lace; case and accents do not count. */
export function isSought({ name, maker = '', lace = '' }: Findable, sought: string): boolean {
  const text = plain(`${name} ${maker} ${lace}`);
  return plain(sought)
    .split(/\s+/)
    .every((word) => text.includes(word));
}

const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

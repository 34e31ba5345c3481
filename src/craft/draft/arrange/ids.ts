import { MAX_ID_LENGTH } from '#pattern/file/limits.ts';

/** Gives ids that are not yet taken: the wanted one, or that one with `.2`, `.3` and so on behind it. */
export class Ids {
  readonly #taken = new Set<string>();

  give(wanted: string): string {
    let id = wanted.slice(0, MAX_ID_LENGTH);
    for (let nth = 2; this.#taken.has(id); nth++) {
      const ending = `.${nth}`;
      id = wanted.slice(0, MAX_ID_LENGTH - ending.length) + ending;
    }
    this.#taken.add(id);
    return id;
  }
}

import type { PatternWithPictures } from '#pattern/container/container.ts';
import { sha256Hex } from '#pattern/container/sha256.ts';
import { encodeUtf8 } from '#pattern/container/utf8.ts';
import { writePattern } from '#pattern/file/write.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { Steps } from './steps.ts';

/** What a backup keeps of a design beside the pattern itself. Times are milliseconds since 1970. */
export interface DesignFacts {
  readonly id: string;
  readonly name: string;
  readonly created: number;
  readonly changed: number;
}

export interface DesignVersion {
  readonly saved: number;
  readonly pattern: Pattern;
}

/** A design with its pictures, its steps, and its earlier versions, the oldest first. */
export interface WholeDesign extends DesignFacts, PatternWithPictures, Steps {
  readonly versions: readonly DesignVersion[];
}

/** Settings as they lie in a backup: plain JSON, of which nothing is known here. */
export type BackupSettings = Readonly<Record<string, unknown>>;

/** Letters that are the same for two patterns exactly where their files and pictures are the same. */
export function contentHash({ pattern, pictures }: PatternWithPictures): string {
  const names = [...pictures.keys()].sort();
  const lines = names.map((name) => `${name} ${sha256Hex(pictures.get(name)!)}`);
  return sha256Hex(encodeUtf8([writePattern(pattern), ...lines].join('\n')));
}

import type { ThreadListTrouble } from '#pattern/threads/thread-list.ts';
import { patternTroubleInWords } from './pattern.ts';
import { quoted, visible } from './quoted.ts';
import { yarnTroubleInWords } from './yarn.ts';

/** Why a file cannot be read as a list of threads, where, and what to do next. */
export function threadListTroubleInWords(trouble: ThreadListTrouble): string {
  switch (trouble.kind) {
    case 'not-threads':
      return trouble.format === null
        ? 'This is not a list of threads: the file does not say that its format is pinlight-threads. Begin from examples/threads.json.'
        : `This is not a list of threads: the file says that its format is ${visible(trouble.format)}. Begin from examples/threads.json.`;
    case 'bad-file':
      return patternTroubleInWords(trouble.trouble);
    case 'bad-count':
      return `${thread(trouble)}: ${yarnTroubleInWords(trouble.trouble)}`;
    case 'no-thickness':
      return `${thread(trouble)} has neither a count nor measured wraps, so that nothing tells how thick it is. Wind it round a ruler, count, and write "wrapsPerCm".`;
    case 'same-name':
      return `${thread(trouble)} has the name of a thread before it. Give it another, so that both can be told apart.`;
  }
}

const thread = ({ place, name }: { place: number; name: string }): string =>
  `Thread ${place + 1}, ${quoted(name)}`;

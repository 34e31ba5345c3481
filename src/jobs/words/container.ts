import type { ContainerTrouble } from '#pattern/container/trouble.ts';
import { patternTroubleInWords } from './pattern.ts';
import { quoted } from './quoted.ts';

/** Why a container cannot be opened, and what to do next. */
export function containerTroubleInWords(trouble: ContainerTrouble): string {
  switch (trouble.kind) {
    case 'damaged-zip':
      return 'The file is damaged or cut off: it begins as a zip file and does not end as one. Copy it again from where it came.';
    case 'too-many-entries':
      return `The file holds more than ${trouble.limit} files, which a pattern with its pictures never does. It was not made by this program.`;
    case 'entry-too-large':
      return `"${trouble.name}" in the file would unpack to ${trouble.size} bytes, and at most ${trouble.limit} are taken. Use a smaller picture of the paper.`;
    case 'bad-entry-name':
      return `The file holds something named ${quoted(trouble.name)}, which cannot be a name there. It was not made by this program, so it was left unopened.`;
    case 'duplicate-entry':
      return `The file holds "${trouble.name}" twice, so nobody can tell which one counts. Make it anew from the pattern and its picture.`;
    case 'missing-entry':
      return `"${trouble.name}" is missing from the file. Take a copy that is whole, or the pattern's .json file alone.`;
    case 'unlisted-entry':
      return `The file holds "${trouble.name}", of which its list knows nothing: somebody added to it. Take a copy that is as it was made.`;
    case 'damaged-entry':
      return `"${trouble.name}" in the file is damaged: its bytes are not the ones that were put in. Copy the file again from where it came.`;
    case 'other-picture':
      return `"${trouble.name}" in the file is not the picture from which the pattern was made. Put the right picture in, or trace this one.`;
    case 'in-entry':
      return `In "${trouble.name}" inside the file: ${patternTroubleInWords(trouble.trouble)}`;
  }
}

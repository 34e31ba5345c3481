import type { FileTrouble } from '../trouble.ts';

/** What is wrong with a file or folder, and what to do next. */
export function fileTroubleInWords(trouble: FileTrouble): string {
  switch (trouble.kind) {
    case 'no-such-file':
      return 'There is no such file. Look at the spelling and the folder.';
    case 'is-a-folder':
      return 'This is a folder. Give one file in it.';
    case 'not-allowed':
      return trouble.to === 'read'
        ? 'You are not allowed to read this file. Ask who owns it, or copy it to a place of your own.'
        : 'You are not allowed to write here. Give another place with -o.';
    case 'file-too-large':
      return `The file is larger than ${Math.round(trouble.limit / 1e6)} MB. Scan at 600 dots an inch or less and save as JPEG or PNG.`;
    case 'cannot-read':
      return `The file cannot be read (${trouble.why}). Copy it to another place and try again.`;
    case 'cannot-write':
      return `The result cannot be written here (${trouble.why}). Give another place with -o.`;
    case 'no-such-folder':
      return 'There is no such folder to write in. Make it first, or give another place with -o.';
    case 'disk-full':
      return 'The disk is full; nothing was written. Make room and try again.';
    case 'same-as-input':
      return 'The result would replace what it is made from. Give another name with -o.';
    case 'folder-is-a-file':
      return 'There is a file of that name where the folder should go. Give another name with -o.';
    case 'folder-not-ours':
      return `The folder holds something that was not put there by "ready" (${trouble.holds}), and it would be lost. Give a new folder with -o.`;
  }
}

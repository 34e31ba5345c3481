import type { FileScale, PictureNote, PictureTrouble } from '../picture/picture.ts';
import { numberInWords } from './number.ts';

const FORMATS = 'JPEG, PNG, TIFF or WebP';

/** Why a picture cannot be read, and what to do next. */
export function pictureTroubleInWords(trouble: PictureTrouble): string {
  switch (trouble.kind) {
    case 'empty-file':
      return 'The file is empty: nothing came through when it was saved or copied. Copy it again.';
    case 'not-a-picture':
      return notAPicture(trouble.is);
    case 'damaged-picture':
      return `The ${trouble.format} picture is damaged or breaks off. If it was copied or sent, copy it again; if it was always so, scan the paper again.`;
    case 'pixels-withheld':
      return 'This browser keeps the dots of pictures from every page, as a guard against being tracked, so that no pins can be seen. Let this page read them (the setting speaks of fingerprinting or canvas), or use another browser.';
    case 'picture-too-large': {
      const { width, height, limit } = trouble;
      return `The picture is too large: ${width} by ${height} dots, and at most ${limit / 1e6} million in all can be opened. Scan it at 600 dots an inch or less, or in parts.`;
    }
  }
}

function notAPicture(is: string | null): string {
  switch (is) {
    case 'PDF':
      return `This is a PDF, not a picture. Save the page as a picture (${FORMATS}) at 300 dots an inch or more.`;
    case 'HEIC':
    case 'AVIF':
      return `This is an ${is} picture, the kind that telephones keep. Save or send it as JPEG.`;
    case 'GIF':
    case 'BMP':
    case 'SVG':
      return `This is ${is === 'SVG' ? 'an' : 'a'} ${is} file, which is not read. Save it as ${FORMATS}.`;
    case 'JSON':
    case 'zip':
      return 'This is no picture. If it is a pattern file, it has no need of tracing: give it to "true", "look", "print" or "ready".';
    default:
      return `This is no picture that can be read. Give a scan as ${FORMATS}.`;
  }
}

/** What a person should know about how the picture was read. */
export function pictureNoteInWords(note: PictureNote): string {
  switch (note.kind) {
    case 'first-page-only':
      return `The file holds ${note.pages} pages or frames; only the first is read.`;
    case 'named-otherwise':
      return `The file is ${note.is} in spite of its name, and is read as that.`;
  }
}

/** Why the scale in the file was not used; null where it states none or was used. */
export function fileScaleInWords(scale: FileScale): string | null {
  if (scale.kind !== 'doubtful') return null;
  const dpi = `${numberInWords(scale.dpi, 1)} dots an inch`;
  switch (scale.why) {
    case 'camera':
      return `The picture comes from a camera: the ${dpi} that it states are not a size of anything.`;
    case 'default':
      return `The file states ${dpi}, which programs write where nobody measured anything.`;
    case 'absurd':
      return `The file states ${dpi}, which no scanner makes.`;
    case 'disagreeing':
      return `The file states its scale twice, and not the same (one says ${dpi}).`;
  }
}

import type { GreyPicture } from '#base/picture/grey.ts';

/**
 * A decoded picture as a door hands it to a job: upright, with what its file says about its scale,
 * and the file to keep beside the pins.
 */
export interface PictureIn extends GreyPicture {
  readonly scale: FileScale;
  readonly notes: readonly PictureNote[];
  readonly file: PictureFile;
}

/** A picture file that any viewer shows upright, the way the pins lie on it. */
export interface PictureFile {
  /** 'paper.jpg' or 'paper.png'. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What a picture file says of its own scale, in dots an inch. */
export type FileScale =
  | { readonly kind: 'none' }
  | { readonly kind: 'stated'; readonly dpi: number }
  /** It says something that nobody measured: what screens and cameras write, or what cannot be. */
  | {
      readonly kind: 'doubtful';
      readonly dpi: number;
      readonly why: 'default' | 'camera' | 'absurd' | 'disagreeing';
    }
  /** Its dots are not square: `across` and `down` differ. */
  | { readonly kind: 'unequal'; readonly across: number; readonly down: number };

/** Something a person should know about how the picture was read. */
export type PictureNote =
  | { readonly kind: 'first-page-only'; readonly pages: number }
  | { readonly kind: 'named-otherwise'; readonly is: string };

/** Why a picture could not be read. */
export type PictureTrouble =
  | { readonly kind: 'empty-file' }
  | { readonly kind: 'not-a-picture'; readonly is: string | null }
  | { readonly kind: 'damaged-picture'; readonly format: string }
  /** The browser gives made-up pixels in place of the picture's own, so that nobody is known again by them. */
  | { readonly kind: 'pixels-withheld' }
  | {
      readonly kind: 'picture-too-large';
      readonly width: number;
      readonly height: number;
      readonly limit: number;
    };

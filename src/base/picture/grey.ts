/**
 * A grey picture, upright as a person sees it: one byte a pixel, 0 black to 255 white, row after row from the top.
 * `grey.length` is `width * height`.
 */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** The parts of pdfkit 0.20 that are used here, among them private ones that have stood still for years. */
declare module 'pdfkit' {
  export interface Reference {
    readonly data: Record<string, unknown>;
    buffer: readonly Uint8Array[];
    compress: boolean;
    finalize: () => void;
    end(bytes?: Uint8Array): void;
  }
  export interface Page {
    readonly height: number;
    readonly dictionary: Reference;
    readonly resources: Reference;
    readonly xobjects: Record<string, Reference>;
  }
  export interface Options {
    readonly autoFirstPage: boolean;
    readonly pdfVersion: string;
    readonly compress: boolean;
    readonly displayTitle: boolean;
    readonly font: null;
    readonly info: Record<string, string | Date>;
  }
  export default class PDFDocument {
    constructor(options: Options);
    readonly page: Page;
    readonly info: Record<string, string | Date>;
    endMetadata: () => void;
    readonly _root: Reference;
    on(event: 'data', listener: (chunk: Uint8Array) => void): this;
    on(event: 'end', listener: () => void): this;
    on(event: 'error', listener: (error: unknown) => void): this;
    addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): this;
    addContent(operators: string): this;
    registerFont(name: string, bytes: Uint8Array): this;
    font(name: string): this;
    fontSize(points: number): this;
    text(
      text: string,
      x: number,
      y: number,
      options: { readonly lineBreak: false; readonly baseline: 'alphabetic' },
    ): this;
    file(
      bytes: Uint8Array,
      options: { readonly name: string; readonly type: string; readonly description: string },
    ): Reference;
    ref: (data: Record<string, unknown>) => Reference;
    end(): void;
  }
}

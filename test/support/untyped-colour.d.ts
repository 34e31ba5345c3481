declare module 'wcag-contrast' {
  export function hex(one: string, other: string): number;
  export function luminance(one: number, other: number): number;
}

declare module 'culori' {
  interface CuloriColour {
    readonly mode: string;
  }
  type Difference = (one: CuloriColour | string, other: CuloriColour | string) => number;
  export function differenceCiede2000(kl?: number, kc?: number, kh?: number): Difference;
  export function converter(
    mode: 'lab65',
  ): (colour: string) => { readonly l: number; readonly a: number; readonly b: number };
  export function wcagContrast(one: string, other: string): number;
}

declare module 'delta-e' {
  interface DeltaColour {
    readonly L: number;
    readonly A: number;
    readonly B: number;
  }
  export function getDeltaE00(one: DeltaColour, other: DeltaColour): number;
}

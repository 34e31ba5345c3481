import type { GreyPicture } from '#base/picture/grey.ts';
import { type Random, seededRandom } from '#base/random.ts';
import { drawPins, edging, fine, jitter, type KnownPattern, omit, round, tape } from './patterns/index.ts';
import { greyOf, renderScan, type ScanOptions, type ScanTruth, throughJpeg } from './scan/index.ts';

/** A generated scan of some kind of pattern in some state of wear, all drawn by one seed. */
export interface DrawnScan {
  readonly name: string;
  readonly picture: GreyPicture;
  readonly rgb: Uint8Array;
  readonly truth: ScanTruth;
}

/** The scan of `seed`; its resolution is drawn too unless given. */
export async function drawScan(seed: number, dpi?: number): Promise<DrawnScan> {
  const random = seededRandom(seed * 7919 + 1);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const one = <Item>(items: readonly Item[]): Item => items[Math.floor(random() * items.length)]!;
  const kind = KINDS[seed % KINDS.length]!;
  const whole = drawPattern(kind, random, between);
  const style =
    kind === 'edging' ? one(['print', 'photocopy', 'card'] as const) : one(['print', 'photocopy'] as const);
  const old = style === 'card' || random() < 0.35;
  const dots = { edging: [0.55, 0.7], fine: [0.42, 0.55], tape: [0.5, 0.68], round: [0.5, 0.65] }[kind];
  const dot = style === 'card' ? between(0.65, 0.85) : between(dots[0]!, dots[1]!);
  const film = style === 'print' ? one(['blue', 'grey', undefined, undefined] as const) : undefined;
  const drawnDpi = random() < 0.15 ? 600 : 300;
  const options: ScanOptions = {
    style,
    dpi: dpi ?? drawnDpi,
    dot,
    line: dot * between(0.26, 0.46),
    skew: between(-3.5, 3.5),
    scaleX: between(0.99, 1.01),
    scaleY: between(0.99, 1.01),
    title: one(['Sampler 7', 'Motif B', 'Mat, 12 sectors', 'Plate IV', 'Fig. 3 (copy)']),
    notes: random() < 0.4 ? ['Work the first pair in cloth stitch; twist twice at each pin.'] : [],
    border: random() < 0.3,
    numbers: Math.floor(between(0, 12)),
    blur: between(0.5, 0.9),
    ...(style === 'photocopy'
      ? { rough: between(0.4, 0.7), bleed: between(-0.15, 0.4), ink: between(0.6, 0.92) }
      : {}),
    ...(film ? { film } : {}),
  };
  // a pin left out leaves a plain crossing behind: the finder must not take it for a dot
  const share = random() < 0.5 ? between(0.02, 0.15) : 0;
  const known = omit(whole, drawPins(whole, Math.round(share * whole.pattern.pins.length), random));
  const made = renderScan(
    old ? jitter(known, between(0.08, kind === 'round' ? 0.13 : 0.2), random) : known,
    options,
    random,
  );
  const scan = await throughJpeg(made, 85);
  const name = `${seed} ${kind} ${style}${old ? ' old' : ''}${film ? ` ${film} film` : ''} ${options.dpi} dpi`;
  return { name, picture: greyOf(scan), rgb: scan.rgb, truth: scan.truth };
}

type Kind = 'edging' | 'fine' | 'tape' | 'round';
const KINDS: readonly Kind[] = ['edging', 'fine', 'tape', 'round'];

function drawPattern(
  kind: Kind,
  random: Random,
  between: (low: number, high: number) => number,
): KnownPattern {
  const tint = random() < 0.3 ? { tint: '#b8b0a0' } : {};
  switch (kind) {
    case 'edging':
      return edging({
        spacing: between(4, 5.5),
        repeats: 3,
        ...tint,
        ...(random() < 0.2 ? { gimp: 0.6 } : {}),
      });
    case 'fine':
      return fine({
        spacing: between(2.1, 2.8),
        angle: between(54, 64),
        repeats: 2,
        gimp: between(0.5, 0.75),
        groundLines: random() < 0.5 ? 0 : between(0, 0.5),
        ...tint,
      });
    case 'tape':
      return tape({ spacing: between(2.2, 3), repeats: 2, workers: random() < 0.5, ...tint });
    case 'round':
      return round({ rings: 12, parts: 9, innerRadius: 11, ...tint });
  }
}

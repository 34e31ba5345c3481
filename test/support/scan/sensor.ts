import type { Random } from '#base/random.ts';
import type { Layer } from './layer.ts';
import { smoothField } from './noise.ts';
import type { ScanSettings } from './options.ts';

type Colour = readonly [number, number, number];

export interface Layers {
  readonly ink: Layer;
  readonly tints: Layer;
  /** Only an old card has holes: dark, with a rim of raised card on the side of the light. */
  readonly holes?: { readonly dark: Layer; readonly rim: Layer };
}

/** Turns ink on paper into what a scanner sees: paper grain, film, uneven light and noise. Bytes in order R, G, B. */
export function expose(layers: Layers, settings: ScanSettings, random: Random): Uint8Array {
  const { ink, tints, holes } = layers;
  const { width, height } = ink;
  const rgb = new Uint8Array(3 * width * height);
  const grain = smoothField(random);
  const cloud = smoothField(random);
  const inkColour: Colour = settings.style === 'card' ? [40, 22, 12] : [26, 26, 28];
  const film = settings.film ? films[settings.film] : undefined;
  const fine = settings.dpi / 150;
  const broad = settings.dpi / 1.2;
  const mottle = settings.style === 'card' ? 9 : 1.5;
  const lightAngle = 2 * Math.PI * random();
  const [lightX, lightY] = [Math.cos(lightAngle) / width, Math.sin(lightAngle) / height];
  const glare = { at: 0.2 + 0.6 * random(), slope: 0.3 * (random() - 0.5) };
  for (let y = 0, index = 0; y < height; y++) {
    for (let x = 0; x < width; x++, index++) {
      const texture = mottle * (cloud(x / broad, y / broad) + 0.5 * grain(x / fine, y / fine));
      const lit = 1 + settings.shade * ((x - width / 2) * lightX + (y - height / 2) * lightY);
      const drawn = settings.ink * ink.cover[index]!;
      const tint = tints.cover[index]!;
      const dark = holes ? holes.dark.cover[index]! : 0;
      const rim = holes ? holes.rim.cover[index]! : 0;
      const noise = settings.noise * (2 * (random() + random() + random()) - 3);
      const shine = film
        ? 26 * Math.exp(-(((y / height - glare.at - glare.slope * (x / width)) / 0.02) ** 2))
        : 0;
      for (let channel = 0; channel < 3; channel++) {
        let value = settings.paper[channel]! + texture;
        value += (1 - dark) * rim * (225 - value) * 0.45;
        value *= 1 - 0.75 * tint;
        value += drawn * (inkColour[channel]! - value);
        value += dark * 0.93 * (22 - value);
        if (film) value = 0.55 * ((value * film[channel]!) / 255) + 0.45 * film[channel]! + shine;
        value = value * lit + noise;
        rgb[3 * index + channel] = value < 0 ? 0 : value > 255 ? 255 : value + 0.5;
      }
    }
  }
  return rgb;
}

const films: Record<'blue' | 'grey', Colour> = { blue: [120, 178, 230], grey: [178, 179, 181] };

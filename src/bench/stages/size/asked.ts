import { type Copier, usualCopier } from '#craft/size/copier.ts';
import { type LaceKind, usualWraps } from '#craft/size/grid.ts';
import { USUAL_LIMIT } from '#craft/size/repeats.ts';
import { threadOf } from '#craft/size/thread.ts';
import type { FitPlace, FitTarget, SizeTarget, SizeWish } from '#jobs/size/wish.ts';
import type { ThreadEntry } from '#pattern/threads/thread-list.ts';

/** What the size is to go by. */
export type Aim = 'none' | 'percent' | 'spacing' | 'thread' | 'length' | 'roller' | 'round' | 'cloth';

/** What a person has said so far, field by field; null where nothing is said yet. */
export interface Asked {
  readonly lace: LaceKind;
  readonly gap: number | null;
  readonly spacing: number | null;
  readonly repeat: number | null;
  readonly pin: number | null;
  readonly copier: Copier;
  readonly thickness: boolean;
  readonly thread: ThreadEntry | null;
  readonly aim: Aim;
  readonly factor: number | null;
  readonly toSpacing: number | null;
  /** The length to fill, once round the pillow, or across the round cloth. */
  readonly place: number | null;
  readonly width: number | null;
  readonly height: number | null;
  readonly corners: FitTarget['corners'];
  readonly limit: number;
  /** The number of repeats that was chosen, and by which way; null for the one that changes least. */
  readonly chosen: { readonly repeats: number; readonly way: 'scale' | 'ease' } | null;
}

export const nothingAsked: Asked = {
  lace: 'torchon',
  gap: null,
  spacing: null,
  repeat: null,
  pin: null,
  copier: usualCopier,
  thickness: false,
  thread: null,
  aim: 'none',
  factor: null,
  toSpacing: null,
  place: null,
  width: null,
  height: null,
  corners: { mm: 0 },
  limit: USUAL_LIMIT,
  chosen: null,
};

/** The wish that the jobs understand. Threads were read when they were given, so that each can be read again. */
export function wishOf(asked: Asked): SizeWish {
  const thread = asked.thread && threadOf(asked.thread);
  return {
    threads: thread?.ok ? [thread.value] : [],
    lace: asked.lace,
    wraps: asked.gap ?? usualWraps[asked.lace],
    spacing: asked.spacing,
    repeat: asked.repeat,
    target: targetOf(asked),
    thickness: asked.thickness,
    copier: asked.copier,
    pin: asked.pin,
  };
}

function targetOf(asked: Asked): SizeTarget | null {
  const { aim, factor, toSpacing } = asked;
  if (aim === 'none') return null;
  if (aim === 'percent') return factor === null ? null : { kind: 'scale', factor };
  if (aim === 'spacing') return toSpacing === null ? null : { kind: 'spacing', spacing: toSpacing };
  if (aim === 'thread') return { kind: 'thread' };
  const place = placeOf(asked, aim);
  const { corners, limit, chosen } = asked;
  return (
    place && {
      kind: 'fit',
      place,
      corners,
      way: chosen?.way ?? null,
      repeats: chosen?.repeats ?? null,
      limit,
    }
  );
}

function placeOf(
  { place, width, height }: Asked,
  aim: 'length' | 'roller' | 'round' | 'cloth',
): FitPlace | null {
  if (aim === 'cloth') {
    return width === null ? null : { kind: 'cloth', width, height: height ?? width };
  }
  if (place === null) return null;
  switch (aim) {
    case 'length':
      return { kind: 'length', length: place };
    case 'roller':
      return { kind: 'roller', circumference: place };
    case 'round':
      return { kind: 'round', diameter: place };
  }
}

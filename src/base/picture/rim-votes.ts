import type { GreyPicture } from './grey.ts';
import { type Ground, groundAt, isInked } from './ground.ts';

/** A place that much of a dark disc's rim points at. */
export interface VotedCentre {
  readonly column: number;
  readonly row: number;
  /** Share of a whole rim that votes for this centre, about 0 to 1.2. */
  readonly share: number;
}

/**
 * Looks for dark discs of one radius. Every edge pixel votes for the place one radius into the dark, weighted by
 * its slope: the slopes across an edge add up to the contrast, so that a whole rim gives its circumference
 * however blurred it is. Straight edges spread their votes; only rims gather them. (After the radial symmetry
 * transform of Loy & Zelinsky, IEEE PAMI 25 (2003).)
 */
export function rimVotes(picture: GreyPicture, ground: Ground, radius: number, least: number): VotedCentre[] {
  const votes = castVotes(picture, ground, radius);
  return gather(votes, picture, ground, 2 * Math.PI * radius * UNIT, least);
}

/** One vote of a slope as steep as the whole contrast. */
const UNIT = 64;
/** Slopes under this share of the contrast a pixel are paper grain. */
const LEAST_SLOPE = 0.09;

function castVotes(picture: GreyPicture, ground: Ground, radius: number): Uint16Array {
  const { width, height, grey } = picture;
  const votes = new Uint16Array(width * height);
  for (let row = 1; row < height - 1; row++) {
    // one contrast a stretch of 32 pixels is as fine as the tiles are
    for (let start = 1; start < width - 1; start += 32) {
      if (!isInked(ground, picture, start + 16, row)) continue;
      const stop = Math.min(start + 32, width - 1);
      const depth = groundAt(ground, ground.depth, picture, start + 16, row);
      const least = LEAST_SLOPE * depth * 8;
      const leastSquared = least * least;
      const scale = UNIT / (8 * depth);
      for (let at = row * width + start; at < row * width + stop; at++) {
        const above = at - width;
        const below = at + width;
        const falling = grey[below + 1]! - grey[above - 1]!;
        const rising = grey[above + 1]! - grey[below - 1]!;
        // Sobel's two slopes, eight times the grey a pixel
        const across = falling + rising + 2 * (grey[at + 1]! - grey[at - 1]!);
        const down = falling - rising + 2 * (grey[below]! - grey[above]!);
        const squared = across * across + down * down;
        if (squared < leastSquared) continue;
        const slope = Math.sqrt(squared);
        const column = Math.round(at - row * width - (across / slope) * radius);
        const line = Math.round(row - (down / slope) * radius);
        if (column < 0 || line < 0 || column >= width || line >= height) continue;
        votes[line * width + column]! += slope * scale;
      }
    }
  }
  return votes;
}

/** Adds up the votes in squares of 3 by 3 and keeps the squares that no near square surpasses. */
function gather(
  votes: Uint16Array,
  picture: GreyPicture,
  ground: Ground,
  whole: number,
  least: number,
): VotedCentre[] {
  const { width, height } = picture;
  const sums = new Uint16Array(votes.length);
  const wanted = least * whole;
  const seeds: number[] = [];
  for (let row = 1; row < height - 1; row++) {
    for (let start = 1; start < width - 1; start += 32) {
      if (!isInked(ground, picture, start + 16, row)) continue;
      let at = row * width + start;
      let before = votes[at - 1 - width]! + votes[at - 1]! + votes[at - 1 + width]!;
      let here = votes[at - width]! + votes[at]! + votes[at + width]!;
      for (const stop = row * width + Math.min(start + 32, width - 1); at < stop; at++) {
        const next = votes[at + 1 - width]! + votes[at + 1]! + votes[at + 1 + width]!;
        const sum = before + here + next;
        sums[at] = sum;
        if (sum >= wanted) seeds.push(at);
        before = here;
        here = next;
      }
    }
  }
  const centres: VotedCentre[] = [];
  for (const seed of seeds) {
    const row = Math.floor(seed / width);
    const column = seed - row * width;
    if (row < 3 || column < 3 || row >= height - 3 || column >= width - 3) continue;
    if (!isHighest(sums, seed, width)) continue;
    let weight = 0;
    let x = 0;
    let y = 0;
    for (let dy = -2; dy <= 2; dy++) {
      for (let dx = -2; dx <= 2; dx++) {
        const vote = votes[seed + dy * width + dx]!;
        weight += vote;
        x += vote * dx;
        y += vote * dy;
      }
    }
    centres.push({ column: column + x / weight, row: row + y / weight, share: weight / whole });
  }
  return centres;
}

function isHighest(sums: Uint16Array, seed: number, width: number): boolean {
  const own = sums[seed]!;
  for (let dy = -2; dy <= 2; dy++) {
    for (let dx = -2; dx <= 2; dx++) {
      const other = sums[seed + dy * width + dx]!;
      if (other > own || (other === own && dy * width + dx < 0)) return false;
    }
  }
  return true;
}

import type { HandEffort, HandPace } from '#craft/route/effort.ts';
import type { PrickingPass } from '#pattern/order.ts';
import type { HandRoute, MachineRoute } from '../route.ts';
import type { RouteTrouble } from '../trouble.ts';
import { countInWords, numberInWords } from './number.ts';

/** The hand's order as a page to read and tick off. */
export function handRouteInWords({ order, effort, pace }: HandRoute): string {
  if (effort.holes === 0) return 'There is no hole to prick.\n';
  const lines = [effortInWords(effort, pace), ''];
  let setting = 0;
  for (const { kind, ruler, order: pins } of order.passes) {
    const how = ruler === null ? 'by eye' : `ruler ${++setting}`;
    lines.push(
      `[ ] ${passKindInWords[kind]}, ${how}: ${countInWords(pins.length, 'hole')}, ${numbers(pins)}`,
    );
  }
  return `${lines.join('\n')}\n`;
}

/** What lies ahead: '561 holes, 20 ruler settings, 141 waxings (one every 4 holes), roughly 31 minutes without a rest.' */
export const effortInWords = (
  { holes, settings, waxings, minutes }: HandEffort,
  { holesPerWaxing }: HandPace,
): string =>
  `${countInWords(holes, 'hole')}, ${countInWords(settings, 'ruler setting')}, ` +
  `${countInWords(waxings, 'waxing')} (one every ${countInWords(holesPerWaxing, 'hole')}), ` +
  `${timeInWords(minutes)}.`;

export const timeInWords = (minutes: number): string =>
  `roughly ${countInWords(minutes, 'minute')} without a rest`;

/** The machine's order as a page to read: what it comes to, then the holes. */
export function machineRouteInWords(
  { order, length, nearest, spread, tooNear }: MachineRoute,
  unit: 'mm' | 'px',
): string {
  if (order.length === 0) return 'There is no hole to make.\n';
  const way = `${countInWords(order.length, 'hole')}, ${numberInWords(length, 1)} ${unit} of way there and back`;
  const lines = [
    spread === null
      ? `${way}: the shortest that was found.`
      : `${way}, each next hole at least ${numberInWords(spread, 2)} mm from the last where that can be.`,
  ];
  if (tooNear > 0) {
    lines.push(
      `${countInWords(tooNear, 'step')} ${tooNear === 1 ? 'is' : 'are'} shorter than that, the shortest ${numberInWords(nearest, 2)} mm: ` +
        'the holes stand too close together for more.',
    );
  }
  return `${[...lines, '', order.map((pin) => pin + 1).join(' ')].join('\n')}\n`;
}

/** Why no order can be given, and what to do. */
export const routeTroubleInWords = (trouble: RouteTrouble): string => {
  switch (trouble.kind) {
    case 'spread-scale-unknown':
      return (
        'The scale of this pattern is not known, so that no distance in millimetres can be kept. ' +
        'Set its size with "true --known", or leave out --spread.'
      );
  }
};

/** What is pricked in a pass. */
export const passKindInWords: Readonly<Record<PrickingPass['kind'], string>> = {
  'outside-edge': 'outside edge',
  curve: 'curve',
  motif: 'motif',
  filling: 'filling',
  ground: 'ground',
};

/** Pins as people count them, from 1. */
const numbers = (pins: readonly number[]): string => pins.map((pin) => pin + 1).join(' ');

import type { Area, Pattern, Stitch } from '#pattern/pattern.ts';
import type { MissingPin } from '#pattern/structure.ts';
import { inspection, pinsAt, type RuleCase, strip } from '../inspections.ts';

const gap = (confidence: number, why: MissingPin['why']) =>
  inspection({}, { missing: [{ x: 90, y: 40, confidence, structure: 's1', why }] });

/** A diamond of cloth with its corners 8 mm from a middle: well round it where the middle is the gap. */
const cloth = (x: number, stitch: Stitch): Area => ({
  id: 'a1',
  stitch,
  outline: [
    { x, y: 32 },
    { x: x + 8, y: 40 },
    { x, y: 48 },
    { x: x - 8, y: 40 },
  ],
});

/** A gap where an area is worked. */
const worked = (area: Area, pins: Pattern['pins'] = pinsAt(strip)) =>
  inspection(
    { pins, areas: [area] },
    { missing: [{ x: 90, y: 40, confidence: 0.9, structure: 's1', why: 'lattice' }] },
  );

export const cases: RuleCase[] = [
  { name: 'a gap', fires: gap(0.9, 'lattice'), nearMiss: gap(0.9, 'run'), mended: inspection({}) },
  {
    name: 'a gap that nothing settles',
    fires: gap(0.3, 'lattice'),
    nearMiss: gap(0.3, 'run'),
    mended: inspection({}),
  },
  {
    name: 'a gap beside an area of cloth, and on its outline',
    fires: worked(cloth(98, 'cloth')),
    nearMiss: worked(cloth(90, 'cloth')),
    mended: inspection({ areas: [cloth(90, 'cloth')] }),
  },
  {
    name: 'a gap in an area of ground',
    fires: worked(cloth(90, 'ground')),
    nearMiss: worked(cloth(90, 'half')),
    mended: inspection({ areas: [cloth(90, 'ground')] }),
  },
  {
    name: 'a gap in an area that has pins within',
    fires: worked(cloth(90, 'whole'), pinsAt([...strip, { x: 92, y: 40 }])),
    nearMiss: worked(cloth(90, 'whole')),
    mended: inspection({ areas: [cloth(90, 'whole')] }),
  },
  {
    name: 'a gap in a round piece',
    fires: gap(0.9, 'polar'),
    nearMiss: gap(0.9, 'run'),
    mended: inspection({}),
  },
];

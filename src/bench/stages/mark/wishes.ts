import type { Mark } from '#pattern/pattern.ts';

/** What a touch of the sheet does at this stage. */
export type Wish = 'choose' | Mark['kind'] | 'area';

/** Markings that grow pin by pin, or place by place. */
export type CourseKind = 'line' | 'gimp' | 'plait' | 'arrow' | 'area';

export const wishes: readonly { readonly value: Wish; readonly words: string }[] = [
  { value: 'choose', words: 'chooses a marking' },
  { value: 'area', words: 'tints an area' },
  { value: 'line', words: 'draws a working line' },
  { value: 'gimp', words: 'lays a gimp' },
  { value: 'plait', words: 'draws a plait' },
  { value: 'picot', words: 'marks a picot' },
  { value: 'arrow', words: 'draws an arrow' },
  { value: 'number', words: 'puts a number' },
  { value: 'text', words: 'writes words' },
];

/** How it is done, for each. */
export const ways: Readonly<Record<Wish, string>> = {
  choose: 'Touch a marking or a tint; touch it again for what lies under it.',
  area: 'Touch inside of the lines that go round it. Touching an area that is tinted already chooses it.',
  line: 'Touch pin after pin, and the last one again when it is done.',
  gimp: 'Touch pin after pin, or places between them. The last one again ends it; the first one again joins it to a ring.',
  plait:
    'Touch pin after pin, or places between them. It begins and ends at a pin; touch that again when it is done.',
  picot: 'Touch the pin that it is worked round.',
  arrow: 'Touch where it comes from, then where it points: pairs hung in, or taken out.',
  number: 'Touch a pin or a place. Numbers count on by themselves.',
  text: 'Touch a pin or a place, then type.',
};

/** What a marking is called on screen. */
export const drawnNames: Readonly<Record<Mark['kind'] | 'area', string>> = {
  area: 'Area',
  line: 'Working line',
  gimp: 'Gimp',
  plait: 'Plait',
  picot: 'Picot',
  arrow: 'Arrow',
  number: 'Number',
  text: 'Words',
};

import type { Stage } from '../stages/stage.ts';

/** The stages in the order of the work. */
export const stages: readonly Stage[] = [
  { id: 'paper', title: 'Paper', load: () => import('../stages/paper/Panel.tsx') },
  { id: 'draft', title: 'Draft', load: () => import('../stages/draft/Panel.tsx') },
  { id: 'pins', title: 'Pins', load: () => import('../stages/pins/Panel.tsx') },
  { id: 'straighten', title: 'Straighten', load: () => import('../stages/straighten/Panel.tsx') },
  { id: 'mark', title: 'Mark', load: () => import('../stages/mark/Panel.tsx') },
  { id: 'size', title: 'Size', load: () => import('../stages/size/Panel.tsx') },
  { id: 'look', title: 'Look over', load: () => import('../stages/look/Panel.tsx') },
  { id: 'make', title: 'Make', load: () => import('../stages/make/Panel.tsx') },
  { id: 'prick', title: 'Prick', load: () => import('../stages/prick/Panel.tsx') },
  { id: 'light', title: 'Light', load: () => import('../stages/light/Panel.tsx') },
];

import type { Finding } from './finding.ts';
import type { Survey } from './survey.ts';

/** One thing to look for. A rule only reads; it knows of no other rule. */
export interface Rule {
  /** Small letters and hyphens; stable, since people and programs refer to it. */
  readonly id: string;
  /** What it looks for, as a heading in a list. */
  readonly title: string;
  readonly look: (survey: Survey) => Finding[];
}

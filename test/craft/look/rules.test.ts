import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { lookOver } from '#craft/look/look-over.ts';
import { rules } from '#craft/look/rules/index.ts';
import type { Inspection } from '#craft/look/survey.ts';
import { inspection, type RuleCase } from './inspections.ts';

/** One file a rule, named after it: a new rule joins by adding its file. */
const folder = new URL('./cases/', import.meta.url);
const tables = new Map<string, readonly RuleCase[]>();
for (const file of readdirSync(folder)) {
  const { cases } = (await import(new URL(file, folder).href)) as { cases: readonly RuleCase[] };
  tables.set(file.replace(/\.ts$/, ''), cases);
}

const said = (rule: string, what: Inspection) => lookOver(what).filter((finding) => finding.rule === rule);

it('every rule has cases and every table has its rule', () => {
  expect([...tables.keys()].sort()).toEqual(rules.map((rule) => rule.id).sort());
});

it('every rule has its line in docs/look.md', () => {
  const page = readFileSync(new URL('../../../docs/look.md', import.meta.url), 'utf8');
  for (const rule of rules) expect(page).toContain(`| \`${rule.id}\` |`);
});

it('a pattern with nothing amiss has no findings', () => {
  expect(lookOver(inspection({}))).toEqual([]);
});

describe.each([...tables])('%s', (rule, cases) => {
  it.each(cases)('speaks of $name', ({ fires, findings = 1 }) => {
    const found = said(rule, fires);
    expect(found).toHaveLength(findings);
    for (const finding of found) {
      expect(finding.sentence).toMatch(/^[\p{Lu}\d].*[^.]\.$/u);
      expect(finding.sentence).not.toMatch(/undefined|null|NaN|Infinity|\d\.\d{3}/);
      for (const index of finding.pins) expect(fires.pattern.pins[index]).toBeDefined();
      if (finding.at) expect([finding.at.x, finding.at.y].every(Number.isFinite)).toBe(true);
    }
  });

  it.each(cases)('is quiet where it is only nearly $name', ({ nearMiss }) => {
    expect(said(rule, nearMiss)).toEqual([]);
  });

  it.each(cases)('falls silent once mended: $name', ({ fires, mended, findings = 1 }) => {
    expect(said(rule, mended).length).toBeLessThan(findings);
    expect(lookOver(mended).length).toBeLessThan(lookOver(fires).length);
  });
});

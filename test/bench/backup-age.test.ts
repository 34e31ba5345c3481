import { describe, expect, test } from 'vitest';
import { backupAge, backupAgeInWords } from '../../src/bench/shelf/backup-age.ts';
import type { DesignCard } from '../../src/bench/store/database.ts';

const DAY = 24 * 60 * 60 * 1000;
const NOW = 1000 * DAY;

const card = (id: string, revision: number, daysOld = 1): DesignCard => ({
  ...{ id, revision, name: id, created: NOW - daysOld * DAY, changed: NOW },
  ...{ first: 0, done: 0, at: 0, pins: 1 },
});
const moment = (daysAgo: number, revisions: Record<string, number>) => ({
  at: NOW - daysAgo * DAY,
  revisions,
});

describe('the reminder of the backup', () => {
  test.each<[string, Parameters<typeof backupAge>[0], Parameters<typeof backupAge>[1], boolean]>([
    ['is silent on the first days', [card('a', 3)], {}, false],
    ['comes after a week without any', [card('a', 3, 8)], {}, true],
    ['comes after 50 edits', [card('a', 50)], {}, true],
    ['is silent after a backup', [card('a', 50, 30)], { backup: moment(1, { a: 50 }) }, false],
    ['comes a week after the backup', [card('a', 51, 30)], { backup: moment(8, { a: 50 }) }, true],
    ['is silent where nothing changed since', [card('a', 50, 90)], { backup: moment(60, { a: 50 }) }, false],
    [
      'comes 50 edits after the backup',
      [card('a', 99), card('b', 1)],
      { backup: moment(1, { a: 50 }) },
      true,
    ],
    ['is silent once put off', [card('a', 60, 30)], { hushed: moment(1, { a: 60 }) }, false],
    ['comes again 50 edits later', [card('a', 110, 30)], { hushed: moment(1, { a: 60 }) }, true],
    ['comes again a week later', [card('a', 61, 30)], { hushed: moment(8, { a: 60 }) }, true],
  ])('%s', (_name, cards, known, due) => {
    expect(backupAge(cards, known, NOW).due).toBe(due);
  });

  test('comes after any edit where the browser clears away what was not used for a week, until it was put off', () => {
    const due = (known: Parameters<typeof backupAge>[1]) => backupAge([card('a', 3)], known, NOW, true).due;
    expect(due({})).toBe(true);
    expect(due({ hushed: moment(0, { a: 2 }) })).toBe(true);
    expect(due({ hushed: moment(0, { a: 3 }) })).toBe(false);
    expect(due({ backup: moment(0, { a: 3 }) })).toBe(false);
  });

  test('says how old it is in words', () => {
    const words = (daysAgo: number, revision: number) =>
      backupAgeInWords(backupAge([card('a', revision)], { backup: moment(daysAgo, { a: 1 }) }, NOW));
    expect(words(0, 1)).toBe('Last backup: today, and nothing has changed since.');
    expect(words(1, 2)).toBe('Last backup: yesterday, and 1 change since.');
    expect(words(9, 4)).toBe('Last backup: 9 days ago, and 3 changes since.');
    expect(backupAgeInWords(backupAge([card('a', 1)], {}, NOW))).toContain('none was made');
  });
});

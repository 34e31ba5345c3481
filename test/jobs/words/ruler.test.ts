import { describe, expect, test } from 'vitest';
import { rulerInWords } from '#jobs/words/calibrate.ts';

describe('what a ruler of 100 mm tells', () => {
  test.each([
    [100, 'true', /is true: 100 mm \(3\.937 in\)/],
    [99.8, 'true', /is true/],
    [100.2, 'true', /is true/],
    [99.7, 'printer-out', /a little out\. Measure it once/],
    [101, 'printer-out', /a little out/],
    [94.1, 'wrong-setting', /most likely a file for A4 was shrunk to fit Letter/],
    [97.3, 'wrong-setting', /a file for Letter was shrunk to fit A4/],
    [96.5, 'wrong-setting', /fitted the page to the printer/],
    [102, 'wrong-setting', /borderless printing is on/],
    [106, 'wrong-setting', /printed from a web browser on a tablet/],
    [90, 'wrong-setting', /look for anything like "fit"/],
  ] as const)('%d mm: %s', (measured, is, words) => {
    const reading = rulerInWords('across', measured);
    expect(reading.is).toBe(is);
    expect(reading.words).toMatch(words);
    expect(reading.words).toMatch(/^The ruler across /);
  });
});

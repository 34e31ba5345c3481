import { Fold } from '../../../parts/Fold.tsx';

const CAUSES = [
  ['96 to 98 mm', 'the page was fitted to the printer'],
  ['94.1 mm', 'a file for A4 was shrunk to fit Letter'],
  ['97.3 mm', 'a file for Letter was shrunk to fit A4'],
  ['about 102 mm', 'borderless printing is on'],
  ['about 106 mm', 'the page was printed from a web browser on a tablet'],
  ['99.0 to 101.0 mm', 'the printer itself is a little out: measure it once'],
] as const;

/** What to choose where the file is printed, and what a wrong ruler tells. */
export function PrintSettings() {
  return (
    <Fold label="What to choose when you print">
      <p>Open the saved file in a program for PDF, and print it from there. Whatever the program:</p>
      <ul>
        <li>choose 100 % or “actual size”, never “fit”;</li>
        <li>choose the paper that is named on the sheet;</li>
        <li>turn borderless printing off, and print on one side only.</li>
      </ul>
      <p>
        On a tablet, save the file first and print it from where it was saved, and look whether the paper that
        the print dialogue names is yours. Programs and printers differ and change, so the rulers on the sheet
        have the last word.
      </p>
      <p>When the ruler of 100 mm measures:</p>
      <dl>
        {CAUSES.map(([measured, cause]) => (
          <div key={measured} className="ruler-cause">
            <dt>{measured}</dt>
            <dd>{cause}</dd>
          </div>
        ))}
      </dl>
    </Fold>
  );
}

import { Button } from 'react-aria-components';
import { sizeInName } from '#jobs/cut/file-name.ts';
import { cutFileInWords } from '#jobs/words/cut.ts';
import { useWork } from '../../../document/use-design.ts';
import { fileName } from '../../../parts/file-name.ts';
import { saveFile } from '../../../parts/save-file.ts';
import type { CutMade } from '../../../worker/make/cut.ts';
import { type CutChoices, unitOf } from './cut-choices.ts';

const TYPES = { dxf: 'image/vnd.dxf', svg: 'image/svg+xml', gcode: 'text/plain' } as const;

/** What each file should measure once it is open elsewhere, and the button that saves it. */
export function SaveCutFiles({ made, choices }: { readonly made: CutMade; readonly choices: CutChoices }) {
  const { name } = useWork();
  const { format, sized } = choices;
  const named = (file: CutMade['files'][number]): string =>
    `${fileName(name)}${file.suffix}${sized ? sizeInName(file, unitOf(choices)) : ''}.${format}`;
  return (
    <>
      {made.pdf && (
        <Button
          className="button main"
          onPress={() => saveFile(`${fileName(name)}-print-first.pdf`, made.pdf!, 'application/pdf')}
        >
          Save the sheet to print first
        </Button>
      )}
      {made.files.map((file) => (
        <section key={file.suffix} className="offer" aria-label={named(file)}>
          <p>{cutFileInWords(file, named(file))}</p>
          <Button
            className="button main"
            onPress={() => saveFile(named(file), new Blob([file.text]), TYPES[format])}
          >
            Save {named(file)}
          </Button>
        </section>
      ))}
      <p>Measure the drawing in the machine’s own program before anything is cut.</p>
    </>
  );
}

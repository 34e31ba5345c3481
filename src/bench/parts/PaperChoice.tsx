import { useState } from 'react';
import { Button } from 'react-aria-components';
import { type PaperSize, paperNamed, paperSizes } from '#base/units/paper.ts';
import { Choice } from './Choice.tsx';

const USUAL = ['A4', 'Letter', 'A3'];

/** Which paper lies in the printer, asked once: the usual ones first, every other size behind one button. */
export function PaperChoice({
  paper,
  onChange,
}: {
  readonly paper: PaperSize | null;
  readonly onChange: (paper: PaperSize) => void;
}) {
  const [choosing, setChoosing] = useState(paper === null);
  const [all, setAll] = useState(paper !== null && !USUAL.includes(paper.name));
  if (paper && !choosing) {
    return (
      <div className="row">
        <p className="fill">
          The paper in your printer: <strong>{paper.name}</strong>, {paper.width} x {paper.height} mm
        </p>
        <Button className="button" onPress={() => setChoosing(true)}>
          Other paper
        </Button>
      </div>
    );
  }
  const shown = paperSizes.filter(
    ({ name, width }) => USUAL.includes(name) || (all && width >= LEAST && width <= MOST),
  );
  const order = (name: string): number => (USUAL.indexOf(name) + USUAL.length + 1) % (USUAL.length + 1);
  const choices = [...shown].sort((one, other) => order(one.name) - order(other.name));
  return (
    <>
      <Choice
        label="The paper in your printer"
        value={paper?.name ?? null}
        onChange={(name) => onChange(paperNamed(name)!)}
        choices={choices.map(({ name, width, height }) => ({
          value: name,
          words: name,
          help: `${width} x ${height} mm`,
        }))}
      />
      {!all && (
        <Button className="button quiet" onPress={() => setAll(true)}>
          Another size
        </Button>
      )}
    </>
  );
}

/** No printer takes a postage stamp, and none of the list's larger sheets fits a printer at home or in a shop, mm. */
const LEAST = 125;
const MOST = 950;

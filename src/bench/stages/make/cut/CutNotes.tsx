import { type ReactNode, useState } from 'react';
import { Button } from 'react-aria-components';
import { boxOf, growBox } from '#base/geometry/box.ts';
import type { CuttingNote } from '#jobs/cut/cut.ts';
import { cuttingNoteInWords } from '#jobs/words/cut.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { useSheet } from '../../../sheet/handle.ts';
import { namedAtFields } from './cut-choices.ts';

/** So many pairs are listed before a person asks for more. */
const FIRST = 8;

/** What is to be known of the files, faults first; each leads to its place on the sheet where it has one. */
export function CutNotes({
  pattern,
  notes,
}: {
  readonly pattern: Pattern;
  readonly notes: readonly CuttingNote[];
}) {
  const sorted = [...notes].sort((one, other) => Number(isFault(other)) - Number(isFault(one)));
  return (
    <ul className="places" aria-label="What to know of the files">
      {sorted.map((note) => (
        <li key={note.kind} className={isFault(note) ? 'fault' : 'warning'}>
          <Place pattern={pattern} pins={pinsOf(note)}>
            <strong>{isFault(note) ? 'Fault' : 'Note'}</strong> {cuttingNoteInWords(note, namedAtFields)}
          </Place>
          {note.kind === 'holes-overlap' && <Pairs pattern={pattern} pairs={note.pairs} />}
        </li>
      ))}
    </ul>
  );
}

function Pairs({
  pattern,
  pairs,
}: {
  readonly pattern: Pattern;
  readonly pairs: readonly (readonly [string, string])[];
}) {
  const [shown, setShown] = useState(FIRST);
  return (
    <>
      <ul className="places">
        {pairs.slice(0, shown).map((pair) => (
          <li key={pair.join(' ')} className="fault">
            <Place pattern={pattern} pins={pair}>
              {pair.join(' with ')}
            </Place>
          </li>
        ))}
      </ul>
      {shown < pairs.length && (
        <Button className="button" onPress={() => setShown(shown + 50)}>
          Show more of the {pairs.length} pairs
        </Button>
      )}
    </>
  );
}

/** Words that lead to where these pins are; words alone where there are none. */
function Place({
  pattern,
  pins,
  children,
}: {
  readonly pattern: Pattern;
  readonly pins: readonly string[];
  readonly children: ReactNode;
}) {
  const sheet = useSheet();
  if (pins.length === 0) return <div className="place">{children}</div>;
  const wanted = new Set(pins);
  const show = () => sheet.zoomTo(growBox(boxOf(pattern.pins.filter(({ id }) => wanted.has(id))), 8));
  return (
    <Button onPress={show}>
      <span>{children}</span>
    </Button>
  );
}

const isFault = ({ kind }: CuttingNote): boolean => kind === 'holes-overlap';

function pinsOf(note: CuttingNote): readonly string[] {
  switch (note.kind) {
    case 'holes-overlap':
      return note.pairs.flat();
    case 'thin-web':
    case 'pins-in-doubt':
      return note.pins;
    default:
      return [];
  }
}

import { useEffect, useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import type { PixelPoint } from '#base/geometry/point.ts';
import { withScale } from '#jobs/trace/paper.ts';
import { chooseScale } from '#jobs/trace/scale.ts';
import { BENCH } from '#jobs/words/door.ts';
import { scaleInWords } from '#jobs/words/trace.ts';
import { scaleTroubleInWords } from '#jobs/words/use.ts';
import type { PaperPicture } from '#pattern/pattern.ts';
import { useWork } from '../../document/use-design.ts';
import { announce } from '../../parts/announce.ts';
import { Choice } from '../../parts/Choice.tsx';
import { LengthField } from '../../parts/LengthField.tsx';
import { Message } from '../../parts/Message.tsx';
import { useSheet } from '../../sheet/handle.ts';
import { useTool } from '../../sheet/use-tool.ts';
import { ExactPlaces } from './ExactPlaces.tsx';
import { type End, type Places, RulerTool } from './ruler-tool.ts';
import { SheetSize } from './SheetSize.tsx';

/** The size of the paper from two places on it and the distance that a ruler shows between them. */
export function Measure({ paper, onClose }: { readonly paper: PaperPicture; readonly onClose: () => void }) {
  const { design } = useWork();
  const sheet = useSheet();
  const [places, setPlaces] = useState<Places>([null, null]);
  const [active, setActive] = useState<End>(0);
  const [length, setLength] = useState<number | null>(null);
  const [pressed, setPressed] = useState(false);

  const set = (end: End, { column, row }: PixelPoint) => {
    const place = { column: inside(column, paper.width), row: inside(row, paper.height) };
    setPlaces(([one, other]) => (end === 0 ? [place, other] : [one, place]));
    announce(`Place ${end + 1} is set.`);
  };
  const put = (end: End, place: PixelPoint) => {
    set(end, place);
    // Once one end is set the other is what a touch means, until both are.
    const other = end === 0 ? 1 : 0;
    setActive(places[other] ? end : other);
  };
  const nudge = (columns: number, rows: number) => {
    const place = places[active];
    if (place) set(active, { column: place.column + columns, row: place.row + rows });
  };
  const events = { choose: setActive, put, nudge };
  // biome-ignore lint/correctness/useExhaustiveDependencies: one tool for as long as this is open, told of the rest below.
  const tool = useMemo(() => new RulerTool({ toPattern: paper.toPattern, places, active }, events), []);
  useTool(tool);
  useEffect(() => {
    tool.update({ toPattern: paper.toPattern, places, active }, events);
    sheet.redraw();
  });

  const [from, to] = places;
  const scale =
    from && to && length ? chooseScale({ kind: 'none' }, { kind: 'span', from, to, length }) : null;
  const missing =
    from && to ? (length ? null : 'Type the distance first.') : 'Set both places on the sheet first.';
  const take = () => {
    setPressed(true);
    if (!scale?.ok || !('dpi' in scale.value)) return;
    design.become(withScale(design.state().pattern, scale.value), 'Set the size of the paper');
    announce('The paper has its size now. Undo takes it back.');
    onClose();
  };
  return (
    <section className="offer" aria-label="A distance on the paper">
      <h3>A distance on the paper</h3>
      <p>{STEPS[from && to ? 2 : from || to ? 1 : 0]}</p>
      <Choice
        label="A touch of the sheet sets"
        value={active === 0 ? 'one' : 'two'}
        onChange={(chosen) => setActive(chosen === 'one' ? 0 : 1)}
        choices={[
          { value: 'one', words: 'place 1' },
          { value: 'two', words: 'place 2' },
        ]}
      />
      <LengthField
        label="Distance between them, as your ruler shows it"
        value={length}
        onChange={setLength}
        help="The longer the distance, the truer the size."
      />
      <ExactPlaces places={places} active={active} set={set} nudge={nudge} />
      {scale && !scale.ok && <Message kind="caution">{scaleTroubleInWords(scale.trouble, BENCH)}</Message>}
      {scale?.ok && 'dpi' in scale.value && (
        <p>
          {scaleInWords(scale.value, { scale: { kind: 'none' } }, BENCH).join(' ')}{' '}
          <SheetSize paper={paper} scale={scale.value} />
        </p>
      )}
      {pressed && missing && <Message kind="caution">{missing}</Message>}
      <Button className="button main" onPress={take}>
        Take this size
      </Button>
      <Button className="button quiet" onPress={onClose}>
        Leave the size as it is
      </Button>
    </section>
  );
}

const STEPS = [
  'Find something on the paper that you can measure with a ruler, such as the footside. Touch the sheet at one end of it.',
  'Now touch the sheet at the other end.',
  'Draw closer to see whether both places are right. To move one, drag its handle, or touch the sheet once more.',
] as const;

const inside = (place: number, length: number): number => Math.min(length - 0.5, Math.max(-0.5, place));

import { useEffect, useMemo, useState } from 'react';
import { Button, Group } from 'react-aria-components';
import type { PixelPoint } from '#base/geometry/point.ts';
import { withScale } from '#jobs/trace/paper.ts';
import { chooseScale } from '#jobs/trace/scale.ts';
import { BENCH } from '#jobs/words/door.ts';
import { scaleInWords } from '#jobs/words/trace.ts';
import { scaleTroubleInWords } from '#jobs/words/use.ts';
import type { PaperPicture } from '#pattern/pattern.ts';
import { useWork } from '../../document/use-design.ts';
import { announce } from '../../parts/announce.ts';
import { LengthField } from '../../parts/LengthField.tsx';
import { Message } from '../../parts/Message.tsx';
import { useSheet } from '../../sheet/handle.ts';
import { useTool } from '../../sheet/use-tool.ts';
import { DotsField } from './DotsField.tsx';
import { type End, type Places, RulerTool } from './ruler-tool.ts';
import { SheetSize } from './SheetSize.tsx';

const NUDGES = [
  ['←', 'left', -1, 0],
  ['→', 'right', 1, 0],
  ['↑', 'up', 0, -1],
  ['↓', 'down', 0, 1],
] as const;

const ENDS = [
  [0, 'First place'],
  [1, 'Second place'],
] as const;

/** The size of the paper from two places on it and the distance that a ruler shows between them. */
export function Measure({ paper, onClose }: { readonly paper: PaperPicture; readonly onClose: () => void }) {
  const { design } = useWork();
  const sheet = useSheet();
  const [places, setPlaces] = useState<Places>([null, null]);
  const [active, setActive] = useState<End>(0);
  const [length, setLength] = useState<number | null>(null);

  const put = (end: End, { column, row }: PixelPoint) => {
    const place = { column: inside(column, paper.width), row: inside(row, paper.height) };
    setPlaces(([one, other]) => (end === 0 ? [place, other] : [one, place]));
    // Once one end is set the other is what a touch means, until both are.
    setActive(places[end === 0 ? 1 : 0] ? end : end === 0 ? 1 : 0);
    announce(`The ${end === 0 ? 'first' : 'second'} place is set.`);
  };
  const nudge = (columns: number, rows: number) => {
    const place = places[active];
    if (place) put(active, { column: place.column + columns, row: place.row + rows });
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
  const take = () => {
    if (!scale?.ok || !('dpi' in scale.value)) return;
    design.become(withScale(design.state().pattern, scale.value), 'Set the size of the paper');
    announce('The paper has its size now. Undo takes it back.');
    onClose();
  };
  return (
    <section className="offer" aria-label="A distance on the paper">
      <h3>A distance on the paper</h3>
      <p>{STEPS[from && to ? 2 : from || to ? 1 : 0]}</p>
      {ENDS.map(([end, words]) => (
        <div key={end} className="paper-place">
          <Button className="button" aria-pressed={active === end} onPress={() => setActive(end)}>
            {words}
            {active === end && ': a touch of the sheet sets it'}
          </Button>
          <div className="pair">
            <DotsField
              label={`${words}, dots across`}
              value={places[end]?.column ?? null}
              onChange={(column) => put(end, { column, row: places[end]?.row ?? 0 })}
            />
            <DotsField
              label={`${words}, dots down`}
              value={places[end]?.row ?? null}
              onChange={(row) => put(end, { column: places[end]?.column ?? 0, row })}
            />
          </div>
        </div>
      ))}
      {places[active] && (
        <Group className="buttons" aria-label="Move it by one dot" data-steps>
          {NUDGES.map(([sign, way, columns, rows]) => (
            <Button
              key={way}
              className="button"
              aria-label={`One dot ${way}`}
              onPress={() => nudge(columns, rows)}
            >
              {sign}
            </Button>
          ))}
        </Group>
      )}
      <LengthField
        label="Distance between them, as your ruler shows it"
        value={length}
        onChange={setLength}
        help="The longer the distance, the truer the size."
      />
      {scale && !scale.ok && <Message kind="caution">{scaleTroubleInWords(scale.trouble, BENCH)}</Message>}
      {scale?.ok && 'dpi' in scale.value && (
        <>
          <p>
            {scaleInWords(scale.value, { scale: { kind: 'none' } }, BENCH).join(' ')}{' '}
            <SheetSize paper={paper} scale={scale.value} />
          </p>
          <Button className="button main" onPress={take}>
            Take this size
          </Button>
        </>
      )}
      <Button className="button quiet" onPress={onClose}>
        Leave the size as it is
      </Button>
    </section>
  );
}

const STEPS = [
  'Find something on the paper that you can measure with a ruler, such as the footside. Touch the sheet at one end of it.',
  'Now touch the sheet at the other end.',
  'Draw closer to see whether both places are right. Drag a handle to move it.',
] as const;

const inside = (place: number, length: number): number => Math.min(length - 0.5, Math.max(-0.5, place));

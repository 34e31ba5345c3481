import './mark.css';
import { useEffect, useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { boxOf, growBox } from '#base/geometry/box.ts';
import { allPlaces, placesOf } from '#paper/ink/places.ts';
import { usePattern, useWork } from '../../document/use-design.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Message } from '../../parts/Message.tsx';
import { ShareSlider } from '../../parts/ShareSlider.tsx';
import { setPreferences, usePreferences } from '../../settings/preferences.ts';
import { useSheet } from '../../sheet/handle.ts';
import { useTool } from '../../sheet/use-tool.ts';
import { useWatched } from '../../watched/use-watched.ts';
import { ChosenArea } from './ChosenArea.tsx';
import { ChosenMark } from './ChosenMark.tsx';
import { GrowingMark } from './GrowingMark.tsx';
import { MarkTable } from './MarkTable.tsx';
import { MarkTool } from './mark-tool.ts';
import { Marking } from './marking.ts';
import { ways, wishes } from './wishes.ts';

/** Mark: lines, gimps, plaits and signs drawn between and beside the pins, and areas tinted. */
export function Panel() {
  const { design } = useWork();
  const pattern = usePattern();
  const sheet = useSheet();
  const marking = useMemo(() => new Marking(design, pattern.unit), [design, pattern.unit]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: one tool for as long as the panel is open, told of the pattern below.
  const tool = useMemo(() => new MarkTool(marking, pattern), [marking]);
  const state = useWatched(marking.watched);
  useEffect(() => () => marking.close(), [marking]);
  const [paper, setPaper] = useState(0.4);
  const { film } = usePreferences();
  useTool(tool);
  useEffect(() => {
    marking.settle(pattern);
    tool.update(pattern);
  }, [marking, tool, pattern]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: drawn anew whenever either changes.
  useEffect(() => sheet.redraw(), [sheet, pattern, state]);
  useEffect(() => {
    sheet.setDress({ paper, film });
    return () => sheet.setDress({});
  }, [sheet, paper, film]);

  const placeOf = useMemo(() => placesOf(pattern), [pattern]);
  const { list, id } = state.chosen ?? {};
  const mark = marking.chosenMark();
  const area = list === 'areas' ? pattern.areas.find((one) => one.id === id) : undefined;
  return (
    <>
      <div className="wishes">
        <Choice
          label="A touch of the sheet"
          value={state.wish}
          onChange={(wish) => marking.wish(wish)}
          choices={wishes}
        />
      </div>
      <p>{ways[state.wish]}</p>
      {state.said && (
        <Message kind="note">
          <p>{state.said}</p>
          {state.wish === 'area' && state.bounds !== 'pins' && (
            <Button className="button" onPress={() => marking.set({ bounds: 'pins' })}>
              Touch the pins round it
            </Button>
          )}
        </Message>
      )}
      <GrowingMark marking={marking} state={state} />
      {mark && <ChosenMark key={mark.id} marking={marking} mark={mark} moving={state.moving} />}
      {area && <ChosenArea key={area.id} marking={marking} area={area} />}
      {pattern.paper && <ShareSlider label="Paper under the markings" value={paper} onChange={setPaper} />}
      <Choice
        label="Film over it"
        value={film}
        onChange={(next) => setPreferences({ film: next })}
        choices={[
          { value: 'none', words: 'none' },
          { value: 'blue', words: 'blue', help: 'with the tints that are printed for it' },
          { value: 'grey', words: 'grey', help: 'with the tints that are printed for it' },
        ]}
      />
      <MarkTable
        pattern={pattern}
        placeOf={placeOf}
        chosen={state.chosen}
        onChoose={({ list, id, anchors }) => {
          marking.choose({ list, id });
          const places = allPlaces(anchors, placeOf);
          if (places) sheet.zoomTo(growBox(boxOf(places), pattern.unit === 'mm' ? 8 : 80));
        }}
      />
    </>
  );
}

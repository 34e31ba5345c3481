import { useEffect, useMemo, useState } from 'react';
import type { Point } from '#base/geometry/point.ts';
import { addPin, updatePins, vouchedFor } from '#pattern/change/edit-pins.ts';
import { removePins } from '#pattern/change/remove-pins.ts';
import type { Pin } from '#pattern/pattern.ts';
import { useDesignState, useWork } from '../../document/use-design.ts';
import { announce } from '../../parts/announce.ts';
import { Choice } from '../../parts/Choice.tsx';
import { ShareSlider } from '../../parts/ShareSlider.tsx';
import { Switch } from '../../parts/Switch.tsx';
import { setPreferences, usePreferences } from '../../settings/preferences.ts';
import { boxAround } from '../../sheet/camera.ts';
import { useSheet } from '../../sheet/handle.ts';
import { useTool } from '../../sheet/use-tool.ts';
import { useWays } from '../ways.ts';
import { DoubtfulPins } from './DoubtfulPins.tsx';
import { PinFields } from './PinFields.tsx';
import { PinTable } from './PinTable.tsx';
import { type PinsMode, PinsTool } from './pins-tool.ts';

const NO_PINS: readonly Pin[] = [];

/** Pins: what was found over the paper, doubtful ones one by one; pins added, moved and removed. */
export function Panel() {
  const { design } = useWork();
  const { pattern } = useDesignState();
  const sheet = useSheet();
  const { place } = useWays();
  const [mode, setMode] = useState<PinsMode>(place && place.pin === null ? 'add' : 'choose');
  const [chosen, setChosen] = useState<string | null>(place?.pin ?? null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, on the way here.
  useEffect(() => {
    if (place) sheet.zoomTo(boxAround(place.at, 10));
  }, []);
  const [paper, setPaper] = useState(0.6);
  const { inLine } = usePreferences();
  const doubtful = useMemo(
    () => pattern.pins.filter(({ doubt }) => doubt && doubt.length > 0),
    [pattern.pins],
  );

  const add = (at: Point, settled: boolean) => {
    const { change, id } = addPin(design.state().pattern, at);
    design.edit(change, 'Added a pin');
    announce(settled ? 'A pin was added, in line with its neighbours.' : 'A pin was added.');
    setChosen(id);
  };
  const remove = (id: string) => {
    design.edit(removePins(design.state().pattern, [id]), 'Removed a pin');
    announce('The pin was removed.');
    setChosen(null);
  };
  const change = (pin: Pin, words: string) => {
    design.edit(updatePins(design.state().pattern, [pin]), words);
    announce(`${words}.`);
  };

  // biome-ignore lint/correctness/useExhaustiveDependencies: one tool for as long as the panel is open, told of the rest below.
  const tool = useMemo(
    () =>
      new PinsTool(
        { pattern, mode, chosen, doubtful, inLine },
        {
          choose: setChosen,
          add,
          remove,
          move: (pin) => change(vouchedFor(pin), 'Moved a pin'),
        },
      ),
    [],
  );
  useTool(tool);
  useEffect(() => {
    tool.update({ pattern, mode, chosen, doubtful: mode === 'choose' ? doubtful : NO_PINS, inLine });
    sheet.redraw();
  }, [tool, sheet, pattern, mode, chosen, doubtful, inLine]);
  useEffect(() => {
    sheet.setDress({ paper, markings: paper < 1 });
    return () => sheet.setDress({});
  }, [sheet, paper]);

  const pin = pattern.pins.find(({ id }) => id === chosen) ?? null;
  return (
    <>
      <p>
        {pattern.pins.length} pins. {doubtful.length > 0 && `${doubtful.length} of them are in doubt.`}
      </p>
      <DoubtfulPins
        pins={doubtful}
        onShow={(one) => {
          setMode('choose');
          setChosen(one.id);
          sheet.zoomTo(boxAround(one, 10));
        }}
        onOver={() => {
          setChosen(null);
          sheet.showWhole();
        }}
        onKeep={(one) => change(vouchedFor(one), 'Kept a pin that was in doubt')}
        onRemove={(one) => remove(one.id)}
      />
      <Choice
        label="A touch of the sheet"
        value={mode}
        onChange={setMode}
        choices={[
          { value: 'choose', words: 'chooses a pin', help: 'drag the chosen pin to move it' },
          { value: 'add', words: 'adds a pin' },
          { value: 'remove', words: 'removes a pin' },
        ]}
      />
      <Switch
        words="Pins fall in line with their neighbours"
        label="Pins fall in line with their neighbours"
        on={inLine}
        onChange={(on) => setPreferences({ inLine: on })}
      />
      {pattern.paper && <ShareSlider label="Paper under the pins" value={paper} onChange={setPaper} />}
      {pin && <PinFields pin={pin} onChange={change} onRemove={() => remove(pin.id)} />}
      <PinTable
        pins={pattern.pins}
        chosen={chosen}
        onChoose={(one) => {
          setChosen(one.id);
          sheet.zoomTo(boxAround(one, 10));
        }}
      />
    </>
  );
}

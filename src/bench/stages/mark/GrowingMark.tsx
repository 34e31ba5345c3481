import { useState } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
import { WordsField } from '../../parts/WordsField.tsx';
import type { Marking, MarkingState } from './marking.ts';
import { NextArea } from './NextArea.tsx';
import { refuseNumber } from './number.ts';
import { SizeField } from './SizeField.tsx';

/** What goes with the marking that is made next, and the one that grows. */
export function GrowingMark({ marking, state }: { readonly marking: Marking; readonly state: MarkingState }) {
  const { wish, path, width, number, height } = state;
  return (
    <>
      {wish === 'text' && path.length > 0 && <Words marking={marking} />}
      {wish !== 'text' && path.length > 0 && (
        <section className="offer" aria-label="The marking that grows">
          <div className="buttons">
            <Button className="button main" isDisabled={path.length < 2} onPress={() => marking.finish()}>
              Done
            </Button>
            <Button className="button" onPress={() => marking.takeBack()}>
              Take back the last pin
            </Button>
            <Button className="button quiet" onPress={() => marking.leave()}>
              Leave it
            </Button>
          </div>
        </section>
      )}
      {wish === 'gimp' && (
        <SizeField
          label="Thickness of the gimp"
          value={width}
          onChange={(mm) => marking.set({ width: mm })}
        />
      )}
      {wish === 'number' && (
        <WordsField
          label="The next number"
          value={`${number}`}
          numeric
          refuse={refuseNumber}
          onChange={(typed) => marking.set({ number: Number(typed) })}
        />
      )}
      {wish === 'text' && (
        <SizeField
          label="Height of the letters"
          value={height}
          onChange={(mm) => marking.set({ height: mm })}
        />
      )}
      {wish === 'area' && <NextArea marking={marking} state={state} />}
    </>
  );
}

/** Words for the place that was touched. */
function Words({ marking }: { readonly marking: Marking }) {
  const [typed, setTyped] = useState('');
  return (
    <form
      className="offer"
      onSubmit={(event) => {
        event.preventDefault();
        marking.write(typed);
      }}
    >
      <TextField className="field" value={typed} onChange={setTyped} autoFocus>
        <Label>Words for this place</Label>
        <Input maxLength={1000} autoComplete="off" />
      </TextField>
      <div className="buttons">
        <Button type="submit" className="button main" isDisabled={!typed.trim()}>
          Write them
        </Button>
        <Button className="button quiet" onPress={() => marking.leave()}>
          Leave it
        </Button>
      </div>
    </form>
  );
}

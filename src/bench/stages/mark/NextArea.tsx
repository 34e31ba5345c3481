import { Choice } from '../../parts/Choice.tsx';
import type { Marking, MarkingState } from './marking.ts';
import { TintFields } from './TintFields.tsx';

/** How the next area is worked and tinted, and where it ends; out of the way while one is chosen. */
export function NextArea({ marking, state }: { readonly marking: Marking; readonly state: MarkingState }) {
  const { bounds, tint, chosen } = state;
  return (
    <>
      <Choice
        label="It ends at"
        value={bounds}
        onChange={(next) => marking.set({ bounds: next })}
        choices={[
          { value: 'lines', words: 'the nearest lines' },
          { value: 'outlines', words: 'the nearest outlines', help: 'gimps, plaits and edges' },
          { value: 'pins', words: 'the pins that I touch', help: 'round it, one after the other' },
        ]}
      />
      {!chosen && (
        <section className="offer" aria-label="The next area">
          <h3>The next area</h3>
          <TintFields tint={tint} onChange={(next) => marking.set({ tint: next })} />
        </section>
      )}
    </>
  );
}

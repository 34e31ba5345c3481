import { Button } from 'react-aria-components';
import type { Area } from '#pattern/pattern.ts';
import type { Marking } from './marking.ts';
import { TintFields } from './TintFields.tsx';

/** The chosen area: how it is worked and tinted, and removing its tint. */
export function ChosenArea({ marking, area }: { readonly marking: Marking; readonly area: Area }) {
  const { id, outline, ...tint } = area;
  return (
    <section className="offer" aria-label="The chosen area">
      <h3>Chosen: area</h3>
      <TintFields
        tint={tint}
        onChange={(changed, words) => marking.change('areas', { id, outline, ...changed }, words)}
      />
      <div className="buttons">
        <Button className="button main" onPress={() => marking.letGo()}>
          Done
        </Button>
        <Button className="button danger" onPress={() => marking.remove({ list: 'areas', id })}>
          Remove this tint
        </Button>
      </div>
    </section>
  );
}

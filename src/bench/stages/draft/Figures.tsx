import { Button } from 'react-aria-components';
import { withPart, withUsual } from '#jobs/draft/parts.ts';
import { figureName } from '#jobs/words/figure-names.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import { SelectField } from '../../parts/SelectField.tsx';
import { FigureField } from './FigureField.tsx';
import { type FigureGroup, figureGroups, type GroupEntry } from './figure-groups.ts';
import type { Trial } from './use-trial.ts';

/** All figures of a recipe in their groups; those of the whole lace stand open. */
export function Figures({ trial, troubled }: { readonly trial: Trial; readonly troubled: string | null }) {
  return figureGroups(trial.recipe).map((group) => (
    <details key={group.path} className="figures" open={group.path === '' || undefined}>
      <summary>{group.title}</summary>
      <div className="figures-within">
        {group.entries.map((entry) => (
          <Entry
            key={entry.kind === 'figure' ? entry.figure.path : entry.part.path}
            {...{ entry, group, trial, troubled }}
          />
        ))}
        {group.absent.length > 0 && (
          <div className="buttons">
            {group.absent.map(({ path }) => (
              <Button
                key={path}
                className="button"
                onPress={() => tried(trial, withUsual(trial.recipe, path))}
              >
                Set: {figureName(path, group.path)}
              </Button>
            ))}
          </div>
        )}
      </div>
    </details>
  ));
}

function Entry({
  entry,
  group,
  trial,
  troubled,
}: {
  readonly entry: GroupEntry;
  readonly group: FigureGroup;
  readonly trial: Trial;
  readonly troubled: string | null;
}) {
  if (entry.kind === 'part') {
    const { path, kinds, now, canBeLeftOut, means } = entry.part;
    const name = path === group.path ? 'Kind' : figureName(path, group.path === '+' ? '' : group.path);
    const none = canBeLeftOut || now === null ? [{ value: '', words: 'none' }] : [];
    return (
      <div className="figure">
        <SelectField
          label={name}
          value={now ?? ''}
          choices={[...none, ...kinds.map((kind) => ({ value: kind, words: kind }))]}
          onChange={(kind) => tried(trial, withPart(trial.recipe, path, kind === '' ? null : kind), path)}
        />
        {means && <small>{means}</small>}
      </div>
    );
  }
  const { figure, canBeLeftOut } = entry;
  const label = figureName(figure.path, group.path);
  return (
    <>
      <FigureField
        figure={figure}
        label={label}
        isTroubled={figure.path === troubled}
        onSet={(text) => trial.set(figure.path, text)}
      />
      {canBeLeftOut && (
        <Button
          className="button quiet"
          onPress={() => tried(trial, withPart(trial.recipe, figure.path, null))}
        >
          Leave out: {label}
        </Button>
      )}
    </>
  );
}

const tried = (trial: Trial, recipe: Recipe | null, fresh: string | null = null): void => {
  if (recipe) trial.tryOut(recipe, { fresh });
};

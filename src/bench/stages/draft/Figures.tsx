import { type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { canBeRemoved } from '#jobs/draft/additions.ts';
import { withPart, withUsual } from '#jobs/draft/parts.ts';
import { figureName } from '#jobs/words/figure-names.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import { FigureField } from './FigureField.tsx';
import { type FigureGroup, figureGroups, type GroupEntry, groupOf } from './figure-groups.ts';
import type { WantedPart } from './guides/Guides.tsx';
import { PartField } from './PartField.tsx';
import type { Trial } from './use-trial.ts';

export interface FiguresProps {
  readonly trial: Trial;
  /** The recipe whose figures are shown. */
  readonly recipe: Recipe;
  /** Path of the figure that stands in the way, where one does. */
  readonly troubled: string | null;
  /** The part that was added last. */
  readonly wanted: WantedPart;
  /** Takes one out of a list. */
  readonly onRemove: (path: string) => void;
}

/** All figures of a recipe in their groups; those of the whole lace stand open. */
export function Figures({ trial, recipe, troubled, wanted: added, onRemove }: FiguresProps) {
  const groups = useMemo(() => figureGroups(recipe), [recipe]);
  /** The group of the part that was put in last: what it begins with wants to be seen. */
  const [fresh, setFresh] = useState<string | null>(null);
  useEffect(() => setFresh(added.path), [added]);
  const wanted = troubled === null ? fresh : groupOf(troubled);
  const tried = (changed: Recipe | null, part: string | null = null) => {
    if (!changed) return;
    setFresh(part === null ? null : groupOf(`${part}.kind`));
    trial.tryOut(changed, { fresh: part });
  };
  return groups.map((group) => (
    <Folded
      key={group.path}
      title={group.title}
      isWanted={group.path === '' || group.path === wanted}
      isSoughtOut={recipe.kind === 'mat' && group.path === added.path}
    >
      {group.entries.map((entry) => (
        <Entry
          key={entry.kind === 'figure' ? entry.figure.path : entry.part.path}
          {...{ entry, group, recipe, trial, troubled, tried }}
        />
      ))}
      {group.absent.length > 0 && (
        <div className="buttons">
          {group.absent.map(({ path }) => (
            <Button key={path} className="button" onPress={() => tried(withUsual(recipe, path))}>
              Set: {figureName(path, group.path)}
            </Button>
          ))}
        </div>
      )}
      {canBeRemoved(recipe, group.path) && (
        <Button className="button danger" onPress={() => onRemove(group.path)}>
          Remove {figureName(group.path).toLowerCase()}
        </Button>
      )}
    </Folded>
  ));
}

/** A group that opens by itself when something in it wants to be seen, and is closed by hand alone. */
function Folded({
  title,
  isWanted,
  isSoughtOut,
  children,
}: {
  readonly title: string;
  readonly isWanted: boolean;
  /** Whether the panel goes to it. */
  readonly isSoughtOut: boolean;
  readonly children: ReactNode;
}) {
  const folded = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    if (isWanted && folded.current) folded.current.open = true;
    if (isSoughtOut) folded.current?.scrollIntoView({ block: 'nearest' });
  }, [isWanted, isSoughtOut]);
  return (
    <details ref={folded} className="figures">
      <summary>{title}</summary>
      <div className="figures-within">{children}</div>
    </details>
  );
}

interface EntryProps extends Pick<FiguresProps, 'trial' | 'recipe' | 'troubled'> {
  readonly entry: GroupEntry;
  readonly group: FigureGroup;
  readonly tried: (changed: Recipe | null, part?: string | null) => void;
}

function Entry({ entry, group, recipe, trial, troubled, tried }: EntryProps) {
  if (entry.kind === 'part') {
    const { part } = entry;
    return (
      <PartField
        part={part}
        group={group.path}
        onKind={(kind) => tried(withPart(recipe, part.path, kind), kind === null ? null : part.path)}
      />
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
        <Button className="button quiet" onPress={() => tried(withPart(recipe, figure.path, null))}>
          Leave out: {label}
        </Button>
      )}
    </>
  );
}

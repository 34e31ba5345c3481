import { useEffect, useMemo, useRef, useState } from 'react';
import type { Point } from '#base/geometry/point.ts';
import type { GuideSpot } from '#craft/draft/guides/guide.ts';
import { guidesOf, spotBehind } from '#craft/draft/guides/guides.ts';
import type { Drafted } from '#craft/draft/redraft.ts';
import type { DraftJob } from '#jobs/draft/draft.ts';
import { figureName } from '#jobs/words/figure-names.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import { announce } from '../../../parts/announce.ts';
import { Choice } from '../../../parts/Choice.tsx';
import { Message } from '../../../parts/Message.tsx';
import { boxAround } from '../../../sheet/camera.ts';
import { useSheet } from '../../../sheet/handle.ts';
import { useTool } from '../../../sheet/use-tool.ts';
import { trialTroubleInWords } from '../trouble-words.ts';
import type { Trial, TrialTrouble } from '../use-trial.ts';
import { DragPreview } from './drag-preview.ts';
import { type ChosenPoint, type GuideMode, GuideTool } from './guide-tool.ts';
import { PointFields } from './PointFields.tsx';
import { PointTable } from './PointTable.tsx';

/** A part of the recipe by its path, to be shown once; null for none. */
export interface WantedPart {
  readonly path: string | null;
}

/** The points that guide tapes, plaits and outlines: on the sheet by touch, and here by keyboard and as a list. */
export function Guides({
  pattern,
  trial,
  wanted,
  onKept,
}: {
  readonly pattern: Drafted;
  readonly trial: Trial;
  /** The part that is to be chosen. */
  readonly wanted: WantedPart;
  /** After an edit was kept: what became of the edits by hand. */
  readonly onKept: (job: DraftJob) => void;
}) {
  const sheet = useSheet();
  const guides = useMemo(() => guidesOf(trial.recipe), [trial.recipe]);
  const [mode, setMode] = useState<GuideMode>('choose');
  const [kept, setChosen] = useState<ChosenPoint | null>(null);
  const chosen = kept && guides[kept.guide]?.points[kept.point] ? kept : null;
  const guide = chosen ? guides[chosen.guide]! : null;
  const point = chosen ? guide!.points[chosen.point]! : null;
  /** Why the dragged point does not lie where it was let go. */
  const [refused, setRefused] = useState<TrialTrouble | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a part is chosen once, when it is wanted.
  useEffect(() => {
    const at = guides.findIndex(({ path }) => path === wanted.path);
    setChosen(at < 0 ? null : { guide: at, point: 0 });
  }, [wanted]);
  const preview = useMemo(() => new DragPreview(), []);
  useEffect(() => () => preview.close(), [preview]);
  const hasGuides = guides.length > 0;
  useEffect(() => {
    if (hasGuides) preview.warm();
  }, [preview, hasGuides]);

  const isTrying = trial.isChanged && !trial.isPassing;
  /** One step; where figures are being tried as well it joins them. */
  const edit = (recipe: Recipe | null, words: string, orElse: Recipe | null = null) => {
    if (!recipe) return;
    setRefused(null);
    if (isTrying) return trial.tryOut(recipe);
    void trial.become(orElse ? [recipe, orElse] : [recipe], words).then((kept) => {
      if (!kept) return;
      setRefused(kept.refused);
      announce(`${words}.`);
      onKept(kept.job);
    });
  };
  const move = (at: ChosenPoint, place: Point, orElse: Recipe | null = null) =>
    edit(guides[at.guide]!.move(at.point, place), `Moved ${nameOf(at)}`, orElse);
  const add = (at: number, spot: GuideSpot) => {
    edit(guides[at]!.add?.(spot) ?? null, 'Added a point');
    setChosen({ guide: at, point: nextPoint(guides[at]!.points, spot.after) });
  };
  const remove = () => {
    const recipe = chosen && guide!.remove(chosen.point);
    if (!recipe) return announce('This point has to stay: without it there is no line.');
    edit(recipe, 'Removed a point');
    setChosen(null);
  };
  const nameOf = ({ guide, point }: ChosenPoint) => `${figureName(guides[guide]!.path)}, point ${point + 1}`;
  const choose = (at: ChosenPoint | null) => {
    setChosen(at);
    if (at) {
      announce(`${nameOf(at)} is chosen. Arrow keys on the sheet move it; Escape lets it go.`);
    }
  };

  const events = {
    choose,
    drag: (recipe: Recipe) => void preview.ask(pattern, recipe, trial.show),
    drop(at: ChosenPoint, place: Point | null) {
      const works = preview.end();
      // What was drafted last stays in sight until the end of the drag is drafted.
      if (isTrying || !place) trial.show(null);
      if (place && guides[at.guide]?.points[at.point]) move(at, place, works);
    },
    nudge(across: number, down: number) {
      if (chosen && point) move(chosen, { x: point.x + across, y: point.y + down });
    },
    add,
    remove,
  };
  const latest = useRef(events);
  useEffect(() => {
    latest.current = events;
  });
  const tool = useMemo(
    () =>
      new GuideTool({
        choose: (at) => latest.current.choose(at),
        drag: (recipe) => latest.current.drag(recipe),
        drop: (at, place) => latest.current.drop(at, place),
        nudge: (across, down) => latest.current.nudge(across, down),
        add: (at, spot) => latest.current.add(at, spot),
        remove: () => latest.current.remove(),
      }),
    [],
  );
  useTool(tool);
  useEffect(() => {
    tool.update({ guides, mode, chosen });
    sheet.redraw();
  }, [tool, sheet, guides, mode, chosen]);

  if (!hasGuides) return null;
  return (
    <section className="guides" aria-label="Guiding points">
      <h3>Guiding points</h3>
      {refused && (
        <Message kind="caution" onDismiss={() => setRefused(null)}>
          <p>The point cannot lie where you let it go, and stays where it could lie last.</p>
          <p>{trialTroubleInWords(refused)}</p>
        </Message>
      )}
      <Choice
        label="A touch of the sheet"
        value={mode}
        onChange={setMode}
        choices={[
          { value: 'choose', words: 'chooses a point', help: 'drag a point to move it' },
          { value: 'add', words: 'adds a point', help: 'on a line, between two points' },
        ]}
      />
      {chosen && guide && point && (
        <PointFields
          title={nameOf(chosen)}
          point={point}
          canBeSharp={guide.setSharp !== null}
          hasToStay={guide.remove(chosen.point) === null}
          canAddBehind={guide.add !== null && spotBehind(guide.line, chosen.point) !== null}
          onMove={(place) => move(chosen, place)}
          onSharp={(sharp) =>
            edit(
              guide.setSharp!(chosen.point, sharp),
              sharp ? 'Made a point a corner' : 'Made a corner round',
            )
          }
          onAddBehind={() => add(chosen.guide, spotBehind(guide.line, chosen.point)!)}
          onRemove={remove}
        />
      )}
      <PointTable
        guides={guides}
        chosen={chosen}
        onChoose={(at) => {
          choose(at);
          sheet.zoomTo(boxAround(guides[at.guide]!.points[at.point]!, 25));
        }}
      />
    </section>
  );
}

/** The number of the point that is put in behind another: beyond the two that shape a drawn curve. */
const nextPoint = (points: readonly { readonly isOn: boolean }[], after: number): number =>
  points[after + 1]?.isOn === false ? after + 3 : after + 1;

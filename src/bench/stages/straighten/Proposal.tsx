import { useCallback, useEffect, useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { proposalParts } from '#craft/true/index.ts';
import type { KnownWords } from '#jobs/true/known.ts';
import type { Proposed } from '#jobs/true/propose.ts';
import { foundInWords, takenInWords } from '#jobs/words/true.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { pinsOfStructure } from '#pattern/structure-pins.ts';
import { useDesignState } from '../../document/use-design.ts';
import { announce } from '../../parts/announce.ts';
import { useSheet } from '../../sheet/handle.ts';
import { useTool } from '../../sheet/use-tool.ts';
import { BeforeAndAfter, usualView } from './BeforeAndAfter.tsx';
import { KnownTruth } from './KnownTruth.tsx';
import { MissingPins, StrayPins } from './OneByOne.tsx';
import { PartList } from './PartList.tsx';
import { StraightenTool } from './straighten-tool.ts';
import { take, usuallyTaken } from './taking.ts';
import { useDress } from './use-dress.ts';
import { useWay } from './use-way.ts';

/** A proposal: seen before and after, taken or left part by part, and taken into the pattern as one step. */
export function Proposal({
  pattern,
  proposed,
  known,
  onKnown,
  onTake,
}: {
  readonly pattern: Pattern;
  readonly proposed: Proposed;
  readonly known: KnownWords;
  readonly onKnown: (known: KnownWords) => void;
  readonly onTake: (after: Pattern, words: string) => void;
}) {
  const { editable } = useDesignState();
  const sheet = useSheet();
  const { proposal } = proposed;
  const parts = useMemo(() => proposalParts(proposal), [proposal]);
  const [ids, setIds] = useState(() => usuallyTaken(parts));
  const taking = useMemo(() => take(pattern, proposed, ids), [pattern, proposed, ids]);
  const [view, setView] = useState(usualView);
  const [chosen, setChosen] = useState<string | null>(null);
  const [asked, setAsked] = useState<string | null>(null);
  const [picking, setPicking] = useState(false);
  const [picked, setPicked] = useState<readonly string[]>(() =>
    known.distance ? [known.distance.from, known.distance.to] : [],
  );
  useDress(pattern, taking.pattern, view);

  const setTaken = useCallback((which: readonly string[], on: boolean) => {
    setIds((before) => {
      const next = new Set(before);
      for (const id of which) {
        if (on) next.add(id);
        else next.delete(id);
      }
      return next;
    });
  }, []);
  const pick = (id: string) => {
    const next = [...(picked.length === 2 ? [] : picked), id].filter(
      (one, at, all) => all.indexOf(one) === at,
    );
    setPicked(next);
    if (next.length === 2) setPicking(false);
    announce(next.length === 2 ? 'Two pins are touched.' : 'The first pin is touched. Touch the other.');
  };
  const choosePin = (index: number) => {
    if (picking) return pick(pattern.pins[index]!.id);
    if (proposal.stray.includes(index)) return setAsked(`stray-${index}`);
    const structure = proposal.structureOf[index] ?? null;
    setChosen(structure);
    announce(
      structure === null ? 'This pin belongs to none of what was found, and stays where it is.' : structure,
    );
  };

  const tool = useMemo(() => new StraightenTool(), []);
  useTool(tool);
  useEffect(() => {
    const structure = proposal.structures.find(({ id }) => id === chosen);
    tool.show(
      {
        pins: pattern.pins,
        taking,
        share: view.share,
        longer: view.longer,
        chosen: structure ? { pins: pinsOfStructure(structure), joined: structure.kind === 'run' } : null,
        asked,
        picked,
      },
      { pin: choosePin, asked: setAsked },
    );
    sheet.redraw();
  });

  const nothing = ids.size === 0;
  const oneByOne = {
    ...{ parts, ids, asked, onAsk: setAsked, onTaken: setTaken },
    ...{ places: taking, share: view.share },
  };
  const wayAfter = useWay(taking.pattern.unit);
  const wordsOf = (tense: 'would' | 'did') => takenInWords(taking, wayAfter(taking.farthest), tense);
  const held = useMemo(() => proposal.structureOf.filter((id) => id !== null).length, [proposal]);
  return (
    <>
      <p>{foundInWords(pattern.pins.length, held, proposal.structures)}</p>
      {parts.length > 0 && (
        <>
          <BeforeAndAfter view={view} onChange={setView} paper={pattern.paper !== undefined} />
          <section className="offer" aria-label="What would be done">
            <p>{wordsOf('would')}</p>
            <Button
              className="button main"
              isDisabled={nothing || !editable}
              onPress={() => onTake(taking.pattern, wordsOf('did'))}
            >
              Straighten
            </Button>
          </section>
        </>
      )}
      {parts.every(({ kind }) => kind !== 'straighten') && proposal.structures.length > 0 && (
        <p>All of them stand true already.</p>
      )}
      <PartList
        pattern={pattern}
        proposal={proposal}
        parts={parts}
        ids={ids}
        chosen={chosen}
        onTaken={setTaken}
        onChoose={setChosen}
      />
      <MissingPins {...oneByOne} structures={proposal.structures} />
      <StrayPins {...oneByOne} />
      <KnownTruth
        pattern={pattern}
        known={known}
        picked={picked}
        picking={picking}
        onPick={() => {
          setPicked([]);
          setPicking(true);
        }}
        onKnown={onKnown}
      />
    </>
  );
}

import { memo, useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { boxOf, growBox } from '#base/geometry/box.ts';
import type { Proposal, ProposalPart } from '#craft/true/index.ts';
import { countInWords } from '#jobs/words/number.ts';
import { copyInWords, numberedName } from '#jobs/words/true.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { Structure } from '#pattern/structure.ts';
import { pinsOfStructure } from '#pattern/structure-pins.ts';
import { Switch } from '../../parts/Switch.tsx';
import { useSheet } from '../../sheet/handle.ts';
import { useWay } from './use-way.ts';

/** So many are shown before all are asked for. */
const FIRST = 8;

/**
 * What was found, those that move farthest first; each is taken or left, and shown on the sheet. It is long work for a
 * large pattern, and not done anew while the slider moves.
 */
export const PartList = memo(function PartList({
  pattern,
  proposal,
  parts,
  ids,
  chosen,
  onTaken,
  onChoose,
}: {
  readonly pattern: Pattern;
  readonly proposal: Proposal;
  readonly parts: readonly ProposalPart[];
  readonly ids: ReadonlySet<string>;
  readonly chosen: string | null;
  readonly onTaken: (ids: readonly string[], on: boolean) => void;
  readonly onChoose: (id: string) => void;
}) {
  const sheet = useSheet();
  const way = useWay(pattern.unit);
  const [all, setAll] = useState(false);
  const places = useMemo(() => new Set(proposal.structureOf), [proposal]);
  if (proposal.structures.length === 0) return null;
  const moves = new Map(parts.flatMap((part) => (part.kind === 'straighten' ? [[part.id, part]] : [])));
  const copy = parts.find((part) => part.kind === 'undistort');
  const farthest = ({ id }: Structure) => moves.get(id)?.farthest ?? -1;
  const sorted = [...proposal.structures].sort((one, other) => farthest(other) - farthest(one));
  const shown = sorted.filter(({ id }, at) => all || at < FIRST || id === chosen);
  const show = (structure: Structure) => {
    onChoose(structure.id);
    sheet.zoomTo(
      growBox(
        boxOf(pinsOfStructure(structure).map((pin) => pattern.pins[pin]!)),
        pattern.unit === 'mm' ? 4 : 40,
      ),
    );
  };
  const wayOf = (structure: Structure) => {
    const { length } = pinsOfStructure(structure);
    const pins = countInWords(length, 'pin');
    const part = moves.get(structure.id);
    if (part) {
      const moving = part.moves.length === length && length > 1 ? 'all' : part.moves.length;
      return `${pins}, ${moving} to move, the farthest by ${way(part.farthest)}`;
    }
    return `${pins}, ${places.has(structure.id) ? 'true already' : 'placed by the other parts'}`;
  };
  return (
    <section className="stack" aria-label="What was found">
      <h3>What was found</h3>
      {moves.size > 1 && (
        <div className="buttons">
          <Button className="button" onPress={() => onTaken([...moves.keys()], true)}>
            Take all
          </Button>
          <Button className="button" onPress={() => onTaken([...moves.keys()], false)}>
            Leave all
          </Button>
        </div>
      )}
      <ul className="parts-found">
        {copy && (
          <li>
            <div className="part-words">
              <strong>The whole copy</strong>
              <span>{copyInWords(copy.map, pattern.unit)}</span>
            </div>
            <Switch
              words="Take"
              label="Take: the whole copy put right"
              on={ids.has(copy.id)}
              onChange={(on) => onTaken([copy.id], on)}
            />
          </li>
        )}
        {shown.map((structure) => (
          <li key={structure.id} aria-current={structure.id === chosen || undefined}>
            <Button className="part-words" onPress={() => show(structure)}>
              <strong>{nameOf(structure)}</strong>
              <span>{wayOf(structure)}</span>
            </Button>
            {moves.has(structure.id) && (
              <Switch
                words="Take"
                label={`Take: ${nameOf(structure)}`}
                on={ids.has(structure.id)}
                onChange={(on) => onTaken([structure.id], on)}
              />
            )}
          </li>
        ))}
      </ul>
      {sorted.length > FIRST && (
        <Button className="button" aria-expanded={all} onPress={() => setAll(!all)}>
          {all ? 'Show fewer' : `Show all ${sorted.length}`}
        </Button>
      )}
    </section>
  );
});

function nameOf(structure: Structure): string {
  const name = numberedName(structure);
  return `${name[0]!.toUpperCase()}${name.slice(1)}`;
}

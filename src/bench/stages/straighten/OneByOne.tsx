import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import type { Point } from '#base/geometry/point.ts';
import type { ProposalPart } from '#craft/true/index.ts';
import { countInWords } from '#jobs/words/number.ts';
import { missingInWords, numberedName } from '#jobs/words/true.ts';
import type { Structure } from '#pattern/structure.ts';
import { boxAround } from '../../sheet/camera.ts';
import { useSheet } from '../../sheet/handle.ts';
import { between, type Taking } from './taking.ts';

interface OneByOneProps {
  readonly parts: readonly ProposalPart[];
  readonly ids: ReadonlySet<string>;
  /** The one that is asked about. */
  readonly asked: string | null;
  readonly onAsk: (id: string) => void;
  readonly onTaken: (ids: readonly string[], on: boolean) => void;
  readonly places: Taking;
  readonly share: number;
}

/** Pins that seem to be missing, one by one: put in or left out. */
export function MissingPins({
  structures,
  parts,
  places,
  share,
  ...props
}: OneByOneProps & { readonly structures: readonly Structure[] }) {
  const nameOf = (id: string) => {
    const structure = structures.find((one) => one.id === id);
    return structure ? numberedName(structure) : id;
  };
  const items = parts.flatMap((part) => {
    if (part.kind !== 'add') return [];
    const place = places.missing.find(({ id }) => id === part.id)!;
    return [
      {
        id: part.id,
        at: between(place.from, place.to, share),
        words: `A pin seems to be missing here: ${missingInWords({ ...part.missing, structure: nameOf(part.missing.structure) })}. Sure: ${Math.round(part.missing.confidence * 100)} in 100.`,
      },
    ];
  });
  return (
    <OneByOne
      {...props}
      items={items}
      one="missing pin"
      title="Missing pins"
      yes="Put it in"
      no="Leave it out"
      taken="It is put in with Straighten."
      left="It is left out."
      allYes="Put in all"
      allNo="Leave out all"
    />
  );
}

/** Pins that seem to be stray, one by one: taken out or kept. */
export function StrayPins({ parts, places, share, ...props }: OneByOneProps) {
  const items = parts.flatMap((part) => {
    if (part.kind !== 'remove') return [];
    const { x, y } = places.places[part.pin]!;
    return [{ id: part.id, at: { x, y }, words: 'This pin belongs to nothing and stands in the way.' }];
  });
  return (
    <OneByOne
      {...props}
      items={items}
      one="stray pin"
      title="Stray pins"
      yes="Take it out"
      no="Keep it"
      taken="It is taken out with Straighten."
      left="It is kept."
      allYes="Take out all"
      allNo="Keep all"
    />
  );
}

function OneByOne({
  items,
  ids,
  asked,
  onAsk,
  onTaken,
  one,
  title,
  yes,
  no,
  taken,
  left,
  allYes,
  allNo,
}: Pick<OneByOneProps, 'ids' | 'asked' | 'onAsk' | 'onTaken'> & {
  readonly items: readonly { readonly id: string; readonly at: Point; readonly words: ReactNode }[];
  readonly one: string;
  readonly title: string;
  readonly yes: string;
  readonly no: string;
  readonly taken: string;
  readonly left: string;
  readonly allYes: string;
  readonly allNo: string;
}) {
  const sheet = useSheet();
  if (items.length === 0) return null;
  const show = (index: number) => {
    const item = items[(index + items.length) % items.length]!;
    onAsk(item.id);
    sheet.zoomTo(boxAround(item.at, 10));
  };
  const now = items.findIndex(({ id }) => id === asked);
  const item = items[now];
  const decide = (on: boolean) => {
    onTaken([item!.id], on);
    if (items.length > 1) show(now + 1);
  };
  const all = items.map(({ id }) => id);
  const chosen = all.filter((id) => ids.has(id)).length;
  return (
    <section className="stack" aria-label={title}>
      <h3>{title}</h3>
      <p>
        {countInWords(items.length, one)} {items.length === 1 ? 'is' : 'are'} proposed, {chosen} of them
        taken.
      </p>
      <div className="buttons">
        <Button className="button" onPress={() => show(now + 1)}>
          {now < 0 ? 'Go through them' : 'Next'}
        </Button>
        <Button className="button" onPress={() => onTaken(all, true)}>
          {allYes}
        </Button>
        <Button className="button" onPress={() => onTaken(all, false)}>
          {allNo}
        </Button>
      </div>
      {item && (
        <div className="offer">
          <p>
            <strong>
              {now + 1} of {items.length}
            </strong>
          </p>
          <p>
            {item.words} {ids.has(item.id) ? taken : left}
          </p>
          <div className="buttons">
            <Button className="button main" onPress={() => decide(true)}>
              {yes}
            </Button>
            <Button className="button" onPress={() => decide(false)}>
              {no}
            </Button>
          </div>
        </div>
      )}
    </section>
  );
}

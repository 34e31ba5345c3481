import type { Part } from '#jobs/draft/parts.ts';
import { figureName } from '#jobs/words/figure-names.ts';
import { SelectField } from '../../parts/SelectField.tsx';
import { MORE } from './figure-groups.ts';

/** Which kind a part is, or that it is left out. */
export function PartField({
  part: { path, kinds, now, canBeLeftOut, means },
  group,
  onKind,
}: {
  readonly part: Part;
  /** Path of the group that it is shown in. */
  readonly group: string;
  readonly onKind: (kind: string | null) => void;
}) {
  const none = canBeLeftOut || now === null ? [{ value: '', words: 'none' }] : [];
  return (
    <div className="figure">
      <SelectField
        label={path === group ? 'Kind' : figureName(path, group === MORE ? '' : group)}
        value={now ?? ''}
        choices={[...none, ...kinds.map((kind) => ({ value: kind, words: kind }))]}
        onChange={(kind) => onKind(kind === '' ? null : kind)}
      />
      {means && <small>{means}</small>}
    </div>
  );
}

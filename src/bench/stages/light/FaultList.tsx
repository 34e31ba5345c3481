import { Button, ToggleButton } from 'react-aria-components';
import { countInWords } from '#jobs/words/number.ts';
import { usePreferences } from '../../settings/preferences.ts';
import type { KeptFault } from './kept-check.ts';

const KIND: Readonly<Record<KeptFault['kind'], string>> = {
  missing: 'Missing',
  'off-centre': 'Off its place',
  oval: 'Oval',
  large: 'Too wide',
  extra: 'Too many',
  unseen: 'Not seen',
};

/** What to see to, one by one: each leads to its place on the sheet and is ticked off once it is mended. */
export function FaultList({
  faults,
  chosen,
  onChoose,
  onMended,
}: {
  readonly faults: readonly KeptFault[];
  readonly chosen: number | null;
  readonly onChoose: (fault: number) => void;
  readonly onMended: (fault: number, mended: boolean) => void;
}) {
  const { shown } = usePreferences();
  const told = faults.flatMap((fault, index) => (fault.words === null ? [] : [{ fault, index }]));
  const left = told.filter(({ fault }) => !fault.mended).length;
  if (told.length === 0) return null;
  return (
    <section aria-labelledby="to-mend">
      <h3 id="to-mend">{left === 0 ? 'All is mended' : `${countInWords(left, 'place')} to see to`}</h3>
      <ul className="places faults">
        {told.map(({ fault, index }) => (
          <li key={index} aria-current={index === chosen || undefined} className={fault.kind}>
            <Button onPress={() => onChoose(index)}>
              <span>
                <strong>{KIND[fault.kind]}</strong> {fault.words}
                <small>
                  {shown(fault.at.x)} across, {shown(fault.at.y)} down
                </small>
              </span>
            </Button>
            <div>
              <ToggleButton
                className="button"
                isSelected={fault.mended}
                onChange={(mended) => onMended(index, mended)}
                aria-label={`Mended: ${fault.words}`}
              >
                {fault.mended ? '✓ Mended' : 'Mended'}
              </ToggleButton>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

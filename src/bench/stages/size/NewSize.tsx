import { Button } from 'react-aria-components';
import { heightOf, widthOf } from '#base/geometry/box.ts';
import { formatInches, formatMm } from '#base/units/format-length.ts';
import { readCopier } from '#jobs/size/read.ts';
import type { Sizing } from '#jobs/size/size.ts';
import {
  choiceInWords,
  copiesInWords,
  measuresInWords,
  percentInWords,
  wantedInWords,
} from '#jobs/words/size.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfPattern } from '#pattern/pins.ts';
import { Fold } from '../../parts/Fold.tsx';
import { Switch } from '../../parts/Switch.tsx';
import { WordsField } from '../../parts/WordsField.tsx';
import type { Asked } from './asked.ts';

/** What the new size comes to, how a copier reaches it, and the step to it. */
export function NewSize({
  pattern,
  sizing,
  asked,
  isOther,
  isNewest,
  editable,
  shown,
  onShown,
  onAsk,
  onMake,
}: {
  readonly pattern: Pattern;
  readonly sizing: Sizing;
  readonly asked: Asked;
  readonly isOther: boolean;
  readonly isNewest: boolean;
  readonly editable: boolean;
  readonly shown: boolean;
  readonly onShown: (shown: boolean) => void;
  readonly onAsk: (more: Partial<Asked>) => void;
  readonly onMake: () => void;
}) {
  const { before, after, factor, copies, fitted } = sizing;
  const rows = [
    ['Footside', before.spacing, after.spacing],
    ['Repeat', before.repeat, after.repeat],
    ...sidesOf(pattern, sizing.pattern ?? pattern),
  ] as const;
  const wanted = wantedInWords(sizing);
  return (
    <>
      <section className="offer" aria-label="The new size">
        <p>
          <strong>{percentInWords(factor)}</strong> of its size.{' '}
          {fitted && `${choiceInWords(fitted.chosen, before.spacing)}.`}
        </p>
        <table className="table">
          <thead>
            <tr>
              <th scope="col">Measure</th>
              <th scope="col">Now</th>
              <th scope="col">Then</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, now, then]) =>
              now === null || then === null ? null : (
                <tr key={name}>
                  <th scope="row">{name}</th>
                  <td>
                    <BothUnits mm={now} />
                  </td>
                  <td>
                    <BothUnits mm={then} />
                  </td>
                </tr>
              ),
            )}
          </tbody>
        </table>
        {isOther && (
          <Switch words="Show it on the sheet" label="Show it on the sheet" on={shown} onChange={onShown} />
        )}
        <Button className="button main" isDisabled={!isOther || !isNewest || !editable} onPress={onMake}>
          Make it this size
        </Button>
        {!isOther && <p>It has this size already. {measuresInWords(after)}</p>}
      </section>
      {isOther && wanted && (
        <p>
          <strong>Thread then:</strong> {wanted}
        </p>
      )}
      {isOther && (
        <Fold label="Pins, and a photocopier">
          <Switch
            words="Pins and holes change too"
            label="Pins and holes change too, as a copier does"
            on={asked.thickness}
            onChange={(thickness) => onAsk({ thickness })}
          />
          <p>A fresh print of the new pattern is truer than any copy.</p>
          <p>On a photocopier: {copiesInWords(copies)}.</p>
          <WordsField
            label="What your photocopier can be set to"
            value={`${asked.copier.least}-${asked.copier.most} %`}
            refuse={(words) => (readCopier(words) ? null : 'Type the least and the most, such as 50-200 %.')}
            onChange={(words) => onAsk({ copier: readCopier(words) ?? asked.copier })}
          />
        </Fold>
      )}
    </>
  );
}

function BothUnits({ mm }: { readonly mm: number }) {
  return (
    <>
      {formatMm(mm)}
      <small className="inches">{formatInches(mm)}</small>
    </>
  );
}

/** How far the pins reach, across and down, now and then. */
function sidesOf(now: Pattern, then: Pattern): (readonly [string, number, number])[] {
  const [one, other] = [boxOfPattern(now), boxOfPattern(then)];
  if (now.pins.length === 0) return [];
  return [
    ['Across', widthOf(one), widthOf(other)],
    ['Down', heightOf(one), heightOf(other)],
  ];
}

import { useState } from 'react';
import { Button } from 'react-aria-components';
import { rulerInWords } from '#jobs/words/calibrate.ts';
import { LengthField } from '../../../parts/LengthField.tsx';
import { Message } from '../../../parts/Message.tsx';

const RULERS = ['across', 'down'] as const;

/** What the rulers of a print measure, and what that tells. */
export function RulerCheck({ onMeasurePrinter }: { readonly onMeasurePrinter: () => void }) {
  const [measured, setMeasured] = useState<Readonly<Record<'across' | 'down', number | null>>>({
    across: null,
    down: null,
  });
  const readings = RULERS.flatMap((ruler) => {
    const length = measured[ruler];
    return length === null ? [] : [rulerInWords(ruler, length)];
  });
  return (
    <>
      <div className="pair">
        <LengthField
          label="Ruler across"
          value={measured.across}
          onChange={(across) => setMeasured({ ...measured, across })}
        />
        <LengthField
          label="Ruler down"
          value={measured.down}
          onChange={(down) => setMeasured({ ...measured, down })}
        />
      </div>
      {readings.map(({ is, words }) => (
        <Message key={words} kind={is === 'true' ? 'good' : 'caution'}>
          <p>{words}</p>
          {is === 'printer-out' && (
            <Button className="button" onPress={onMeasurePrinter}>
              Measure the printer
            </Button>
          )}
        </Message>
      ))}
    </>
  );
}

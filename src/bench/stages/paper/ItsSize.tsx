import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { scaleOfPaper } from '#jobs/trace/paper.ts';
import { BENCH } from '#jobs/words/door.ts';
import { scaleInWords } from '#jobs/words/trace.ts';
import { scaleTroubleInWords } from '#jobs/words/use.ts';
import type { PaperPicture, Pattern } from '#pattern/pattern.ts';
import { Message } from '../../parts/Message.tsx';
import { useJob } from '../../worker/use-job.ts';
import { Measure } from './Measure.tsx';
import { SheetSize } from './SheetSize.tsx';
import { TypedDots } from './TypedDots.tsx';

export interface ItsSizeProps {
  readonly pattern: Pattern;
  readonly paper: PaperPicture;
  readonly picture: Blob;
  readonly editable: boolean;
}

/** How large the paper is, how that is known and whether to trust it, and a way to measure it. */
export function ItsSize({ pattern, paper, picture, editable }: ItsSizeProps) {
  const [measuring, setMeasuring] = useState(false);
  const [asked, ask] = useJob('paperScale');
  useEffect(() => void ask(picture), [ask, picture]);
  const scale = scaleOfPaper(pattern) ?? pattern.scale;
  const known = 'dpi' in scale;
  const stated = asked.at === 'done' ? asked.made : null;
  return (
    <section aria-labelledby="paper-size">
      <h3 id="paper-size">Its size</h3>
      {known && (
        <p>
          {scaleInWords(scale, { scale: { kind: 'none' } }, BENCH).join(' ')}{' '}
          <SheetSize paper={paper} scale={scale} />
        </p>
      )}
      {!known && stated && (
        <Message kind="caution">
          {stated.kind === 'unequal'
            ? scaleTroubleInWords({ kind: 'unequal-dots', across: stated.across, down: stated.down }, BENCH)
            : scaleInWords(scale, { scale: stated }, BENCH).join(' ')}
        </Message>
      )}
      {scale.from === 'file' && <p>A ruler laid on the paper tells for certain.</p>}
      {measuring ? (
        <Measure paper={paper} onClose={() => setMeasuring(false)} />
      ) : (
        <>
          <Button
            className={known ? 'button' : 'button main'}
            isDisabled={!editable}
            onPress={() => setMeasuring(true)}
          >
            Measure a distance
          </Button>
          {editable && <TypedDots dpi={known ? scale.dpi : null} />}
        </>
      )}
    </section>
  );
}

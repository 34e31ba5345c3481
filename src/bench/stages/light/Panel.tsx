import { useCallback, useEffect, useMemo, useState } from 'react';
import { revisionOfPins } from '#jobs/revision.ts';
import { BENCH } from '#jobs/words/door.ts';
import { lightTroubleInWords } from '#jobs/words/light.ts';
import { useDesignState, useWork } from '../../document/use-design.ts';
import { Fold } from '../../parts/Fold.tsx';
import { LengthField } from '../../parts/LengthField.tsx';
import { Message } from '../../parts/Message.tsx';
import { useDrop } from '../../parts/use-drop.ts';
import { Working } from '../../parts/Working.tsx';
import { useKept } from '../../store/use-kept.ts';
import type { CardChecked } from '../../worker/light-jobs.ts';
import { useJob } from '../../worker/use-job.ts';
import { CheckMap } from './CheckMap.tsx';
import { CheckTroubleMessage } from './CheckTroubleMessage.tsx';
import { keptCheckSchema, keptFrom } from './kept-check.ts';
import { TakePhoto } from './TakePhoto.tsx';
import { usePhoto } from './use-photo.ts';
import { Verdicts } from './Verdicts.tsx';
import './light.css';

/** Light: a photo of the pricked card, held to the light, against its pattern. */
export function Panel() {
  const { id } = useWork();
  const { pattern } = useDesignState();
  const [file, setFile] = useState<File | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const [thickness, setThickness] = useState<number | null>(pattern.sizes.cardThickness ?? null);
  const [checked, setChecked] = useState<CardChecked | null>(null);
  const [job, run] = useJob('checkCard');
  const { value: kept, lost, keep } = useKept(id, 'light', keptCheckSchema);
  const pins = useMemo(() => revisionOfPins(pattern), [pattern]);
  const photo = usePhoto(checked);

  const check = useCallback(
    async (photo: File, cardThickness: number | null) => {
      setRefused(null);
      setFile(photo);
      setChecked(null);
      const made = await run(pattern, photo, cardThickness);
      if (!made?.ok) return;
      setChecked(made.value);
      keep(keptFrom(pattern, made.value));
    },
    [run, keep, pattern],
  );
  const thick = (mm: number | null) => {
    setThickness(mm);
    if (file && checked) void check(file, mm);
  };
  const take = useCallback((photo: File) => void check(photo, thickness), [check, thickness]);
  useDrop(take, setRefused);
  // biome-ignore lint/correctness/useExhaustiveDependencies: other pins make the photo that was checked by the old ones void.
  useEffect(() => setChecked(null), [pins]);

  if (pattern.unit !== 'mm') {
    return (
      <>
        <Message kind="caution">{lightTroubleInWords({ kind: 'light-scale-unknown' }, BENCH)}</Message>
        <a className="button" href={`#/design/${id}/paper`}>
          To the stage Paper
        </a>
      </>
    );
  }
  if (job.at === 'work')
    return <Working words="Looking at the photo" share={job.share} onCancel={job.cancel} />;
  const valid = kept && kept.pins === pins ? kept : null;
  return (
    <div className="light">
      {refused && <Message kind="trouble">{refused}</Message>}
      {job.at === 'broken' && <Message kind="trouble">{job.why}</Message>}
      {job.at === 'done' && !job.made.ok && <CheckTroubleMessage trouble={job.made.trouble} />}
      {lost && (
        <Message kind="trouble">
          This browser could not keep the list. It holds until this page is closed.
        </Message>
      )}
      {kept && !valid && (
        <Message kind="caution">
          Pins were added, moved or removed since the last photo was checked. Take a new one.
        </Message>
      )}
      {valid ? (
        <Verdicts check={valid} photo={photo} onChange={keep} />
      ) : (
        <p>
          Hold the pricked card against a window or a lamp, so that its holes shine, and photograph it: the
          whole card, sharp, and as large as it goes. It may lie any way round and either side up.
        </p>
      )}
      <TakePhoto again={valid !== null} take={take} />
      <p>
        The photo stays on this device. It is not kept with the pattern
        {valid && ': the list is'}.
      </p>
      <LengthField
        label="How thick the card is"
        value={thickness}
        help="Tells how far the needle leant where a hole is oval. May be left empty."
        onChange={thick}
        onClear={() => thick(null)}
      />
      {checked && file && (
        <Fold label="A map to prick again by">
          <CheckMap file={file} judgement={checked.judgement} />
        </Fold>
      )}
    </div>
  );
}

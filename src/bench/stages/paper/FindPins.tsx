import { useState } from 'react';
import { Button } from 'react-aria-components';
import { countInWords } from '#jobs/words/number.ts';
import { troubleInWords } from '#jobs/words/trouble.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { useWork } from '../../document/use-design.ts';
import { Message } from '../../parts/Message.tsx';
import { Working } from '../../parts/Working.tsx';
import { useJob } from '../../worker/use-job.ts';

type Told = { readonly kind: 'good' | 'caution' | 'trouble'; readonly sentences: readonly string[] };

/** Looks for the pins on the paper. Where there are pins already, it asks before they are replaced. */
export function FindPins({
  pattern,
  picture,
  editable,
}: {
  readonly pattern: Pattern;
  readonly picture: Blob;
  readonly editable: boolean;
}) {
  const { design } = useWork();
  const [job, trace] = useJob('trace');
  const [asked, setAsked] = useState(false);
  const [told, setTold] = useState<Told | null>(null);

  const find = async () => {
    setAsked(false);
    setTold(null);
    const found = await trace(pattern, picture);
    if (!found) return;
    if (!found.ok) return setTold({ kind: 'trouble', sentences: [troubleInWords(found.trouble)] });
    const { pattern: made, notes } = found.value;
    if (design.state().pattern !== pattern) return setTold({ kind: 'caution', sentences: [MEANWHILE] });
    if (made.pins.length === 0) return setTold({ kind: 'caution', sentences: notes });
    design.become(made, 'Found the pins');
    const doubtful = made.pins.filter(({ doubt }) => doubt && doubt.length > 0).length;
    setTold({ kind: 'good', sentences: [...notes, inDoubt(doubtful)] });
  };
  const press = () => (pattern.pins.length > 0 ? setAsked(true) : void find());

  return (
    <section aria-labelledby="paper-pins">
      <h3 id="paper-pins">Its pins</h3>
      {told && (
        <Message kind={told.kind}>
          {told.sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Message>
      )}
      {job.at === 'broken' && <Message kind="trouble">{BROKEN}</Message>}
      {job.at === 'work' && (
        <Working
          words={job.stage === 'read' || job.stage === '' ? 'Reading the picture' : 'Looking for the pins'}
          share={job.share}
          onCancel={job.cancel}
        />
      )}
      {job.at !== 'work' && asked && (
        <div className="offer">
          <p>
            This pattern has {countInWords(pattern.pins.length, 'pin')} already. Finding them anew takes away
            these and all markings, and whatever you did to them. Undo brings them back.
          </p>
          <div className="buttons">
            <Button className="button" onPress={() => setAsked(false)} autoFocus>
              Keep them
            </Button>
            <Button className="button danger" onPress={find}>
              Find them anew
            </Button>
          </div>
        </div>
      )}
      {job.at !== 'work' && !asked && (
        <Button
          className={pattern.pins.length > 0 ? 'button' : 'button main'}
          isDisabled={!editable}
          onPress={press}
        >
          Find the pins
        </Button>
      )}
    </section>
  );
}

const inDoubt = (many: number): string =>
  many === 0
    ? 'None of them is in doubt.'
    : `${countInWords(many, 'pin')} in doubt: the stage Pins goes through them one by one.`;

const MEANWHILE = 'The pattern was changed meanwhile, so nothing was replaced. Find the pins once more.';
const BROKEN = 'The pins could not be looked for. The picture may be too large for this device.';

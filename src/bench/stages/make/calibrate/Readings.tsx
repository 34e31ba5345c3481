import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { PaperSize } from '#base/units/paper.ts';
import { calibrationInWords } from '#jobs/words/calibrate.ts';
import type { PrinterProfile } from '#paper/calibrate/profile.ts';
import { LengthField } from '../../../parts/LengthField.tsx';
import { Message } from '../../../parts/Message.tsx';
import { Switch } from '../../../parts/Switch.tsx';
import { WordsField } from '../../../parts/WordsField.tsx';
import { useJob } from '../../../worker/use-job.ts';
import { TroubleMessage } from '../Trouble.tsx';

const CORRECT_LEAN = 'Correct a lean to one side too';
const MOST_SPREAD = 0.3;
const NAMES = {
  correctLean: `\u201c${CORRECT_LEAN}\u201d`,
  secondSheet: '\u201cMake the sheet that proves it\u201d below',
};
const LABELS = {
  print: { across: 'A, the line across', down: 'B, the line down' },
  photocopy: { across: 'The rulers across, their mean', down: 'The rulers down, their mean' },
} as const;

type Lengths = Readonly<Record<'across' | 'down' | 'falling' | 'rising', number | null>>;

/** What was read from the first print; kept as a printer of that name once it makes sense. */
export function Readings({
  paper,
  use,
  onKeep,
}: {
  readonly paper: PaperSize;
  readonly use: PrinterProfile['use'];
  readonly onKeep: (profile: PrinterProfile) => void;
}) {
  const [lengths, setLengths] = useState<Lengths>({ across: null, down: null, falling: null, rising: null });
  const [inkSpread, setInkSpread] = useState(0);
  const [correctLean, setCorrectLean] = useState(false);
  const [name, setName] = useState(use === 'print' ? 'My printer' : 'My copier');
  const [program, setProgram] = useState('');
  const [job, measure] = useJob('measurePrinter');
  const { across, down, falling, rising } = lengths;
  const set = (key: keyof Lengths) => ({
    value: lengths[key],
    onChange: (mm: number) => setLengths({ ...lengths, [key]: mm }),
    onClear: () => setLengths({ ...lengths, [key]: null }),
  });
  const keep = async () => {
    if (across === null || down === null) return;
    const made = await measure({
      paper,
      names: {
        name,
        use,
        ...(program && { program }),
        date: new Date().toISOString().slice(0, 10),
      },
      measured: { across, down, ...(falling !== null && { falling }), ...(rising !== null && { rising }) },
      ...{ correctLean, inkSpread },
    });
    if (made?.ok) onKeep(made.value.profile);
  };
  const spreadFits = inkSpread >= 0 && inkSpread <= MOST_SPREAD;
  return (
    <>
      <LengthField label={LABELS[use].across} {...set('across')} />
      <LengthField label={LABELS[use].down} {...set('down')} />
      {use === 'print' && (
        <>
          <LengthField label="C, the falling diagonal" {...set('falling')} help="may be left out" />
          <LengthField label="D, the rising diagonal" {...set('rising')} help="may be left out" />
          <LengthField
            label="The widest gap that has closed"
            value={inkSpread}
            onChange={setInkSpread}
            help="how far your ink spreads, 0 to 0.3 mm; look at the strip with a magnifier"
            any
          />
          <Switch words={CORRECT_LEAN} label={CORRECT_LEAN} on={correctLean} onChange={setCorrectLean} />
        </>
      )}
      {!spreadFits && (
        <Message kind="caution">The gap that has closed is 0 to 0.3 mm wide. Look at it again.</Message>
      )}
      <WordsField
        label="What you call it"
        value={name}
        onChange={setName}
        refuse={nameRefused}
        help="one of the same name is replaced"
      />
      <WordsField
        label="The program that you print with"
        value={program}
        onChange={setProgram}
        refuse={(words) => (words.length > MOST_LETTERS ? TOO_LONG : null)}
        help="may be left out"
      />
      <Button
        className="button main"
        onPress={keep}
        isDisabled={across === null || down === null || !spreadFits || job.at === 'work'}
      >
        Keep this {use === 'print' ? 'printer' : 'copier'}
      </Button>
      {job.at === 'done' && job.made.ok && (
        <Message kind="good">
          {calibrationInWords(job.made.value.profile, job.made.value.calibration, NAMES).map((words) => (
            <p key={words}>{words}</p>
          ))}
        </Message>
      )}
      {job.at === 'done' && !job.made.ok && <TroubleMessage trouble={job.made.trouble} />}
      {job.at === 'broken' && <Message kind="trouble">{job.why}</Message>}
    </>
  );
}

/** As many as a line on paper holds. */
const MOST_LETTERS = 200;
const TOO_LONG = 'A name has at most 200 letters.';

const nameRefused = (words: string): string | null =>
  words === '' ? 'It needs a name, such as Kitchen printer.' : words.length > MOST_LETTERS ? TOO_LONG : null;

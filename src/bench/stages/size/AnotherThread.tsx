import { useState } from 'react';
import { Button, Input, Label, Text, TextField } from 'react-aria-components';
import { type Fibre, fibres } from '#base/units/yarn/fibre.ts';
import { parseYarn } from '#base/units/yarn/parse.ts';
import { readWraps } from '#jobs/size/read.ts';
import { likelyFibre } from '#jobs/threads/likely-fibre.ts';
import { yarnTroubleInWords } from '#jobs/words/yarn.ts';
import type { ThreadEntry } from '#pattern/threads/thread-list.ts';
import { Message } from '../../parts/Message.tsx';
import { SelectField } from '../../parts/SelectField.tsx';

/** A thread by what stands on its spool, by the wraps that were counted, or best by both. */
export function AnotherThread({ onThread }: { readonly onThread: (thread: ThreadEntry) => void }) {
  const [label, setLabel] = useState('');
  const [fibre, setFibre] = useState<Fibre | ''>('');
  const [wraps, setWraps] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  const use = () => {
    const read = readEntry(label.trim(), fibre, wraps.trim());
    setTrouble(typeof read === 'string' ? read : null);
    if (typeof read !== 'string') onThread(read);
  };
  return (
    <>
      <Words
        label="What stands on the spool"
        help="With its system: NeL 80/2, Ne 60/2, 16 tex x 2, 120 den"
        value={label}
        onChange={setLabel}
      />
      <SelectField
        label="Spun of"
        value={fibre}
        choices={[
          { value: '', words: 'what its number lets one expect' },
          ...fibres.map((one) => ({ value: one, words: one })),
        ]}
        onChange={(one) => setFibre(one as Fibre | '')}
      />
      <Words
        label="Wraps that you counted"
        help="Round a ruler, side by side: 28/cm or 71/in. Worth more than any label"
        value={wraps}
        onChange={setWraps}
      />
      {trouble && <Message kind="caution">{trouble}</Message>}
      <Button className="button main" onPress={use}>
        Use this thread
      </Button>
    </>
  );
}

/** The thread that was typed, or why it is not understood. */
function readEntry(label: string, fibre: Fibre | '', counted: string): ThreadEntry | string {
  if (label === '' && counted === '') return 'Type what stands on the spool, or the wraps that you counted.';
  const yarn = label === '' ? null : parseYarn(label);
  if (yarn && !yarn.ok) return yarnTroubleInWords(yarn.trouble);
  const wrapsPerCm = counted === '' ? null : readWraps(counted);
  if (counted !== '' && wrapsPerCm === null) {
    return 'Wraps are how often it goes round side by side, such as 28/cm or 71/in.';
  }
  const spun = fibre || likelyFibre(label === '' ? null : label, yarn?.value ?? null);
  if (!spun) return 'This number does not tell what the thread is spun of. Choose it under “Spun of”.';
  return {
    name: label === '' ? 'Your thread' : label.slice(0, MOST),
    fibre: spun,
    ...(label !== '' && { count: label }),
    ...(wrapsPerCm !== null && { wrapsPerCm }),
  };
}

/** No name in a list of threads is longer. */
const MOST = 80;

function Words({
  label,
  help,
  value,
  onChange,
}: {
  readonly label: string;
  readonly help: string;
  readonly value: string;
  readonly onChange: (words: string) => void;
}) {
  return (
    <TextField className="field" value={value} onChange={onChange}>
      <Label>{label}</Label>
      <Input autoComplete="off" maxLength={MOST} />
      <Text slot="description">{help}</Text>
    </TextField>
  );
}

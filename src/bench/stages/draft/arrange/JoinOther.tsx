import { useState } from 'react';
import { Button } from 'react-aria-components';
import { troubleInWords } from '#jobs/words/trouble.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { Choice } from '../../../parts/Choice.tsx';
import { FileButton } from '../../../parts/FileButton.tsx';
import { runJob } from '../../../worker/run.ts';
import type { Arranges } from './Arrange.tsx';
import { type JoinSide, meetingPins } from './outer-pin.ts';

interface Other {
  readonly name: string;
  readonly pattern: Pattern;
}

/** Another pattern from a file, laid over this one as it lies, or so that two pins meet. */
export function JoinOther({
  pattern,
  arrange,
  onTrouble,
}: {
  readonly pattern: Pattern;
  readonly arrange: Arranges;
  readonly onTrouble: (line: string) => void;
}) {
  const [other, setOther] = useState<Other | null>(null);
  const [side, setSide] = useState<JoinSide>('below');
  const take = async (file: File) => {
    try {
      const opened = await runJob('open', [new Uint8Array(await file.arrayBuffer())]);
      if (opened.ok) setOther({ name: file.name, pattern: opened.value.pattern });
      else onTrouble(`${file.name}: ${troubleInWords(opened.trouble)}`);
    } catch {
      onTrouble(`${file.name} could not be opened. Nothing was changed. Try once more.`);
    }
  };
  if (!other) {
    return <FileButton words="Join another pattern to it" take={(file) => void take(file)} />;
  }
  if (other.pattern.unit !== pattern.unit) {
    return (
      <p>
        {other.name}: one of the two patterns is in millimetres and the other in pixels of a scan, so nobody
        knows how they fit together. Set the size of the one in pixels first, at the stage Paper.
      </p>
    );
  }
  return (
    <section className="offer" aria-label="Join another pattern">
      <p>
        {other.name}, {other.pattern.pins.length} pins.
      </p>
      <Choice
        label="Where it is joined"
        value={side}
        onChange={setSide}
        choices={[
          { value: 'below', words: 'below', help: 'its first pin on the last one at the bottom left' },
          { value: 'right', words: 'to the right', help: 'its first pin on the outermost at the top right' },
          { value: 'as-it-lies', words: 'over this one, as it lies' },
        ]}
      />
      <div className="buttons">
        <Button
          className="button main"
          onPress={() => {
            const on = meetingPins(pattern, other.pattern, side);
            arrange({ kind: 'join', other: other.pattern, on }, `Joined ${other.name}`);
            setOther(null);
          }}
        >
          Join it
        </Button>
        <Button className="button" onPress={() => setOther(null)}>
          Leave it
        </Button>
      </div>
    </section>
  );
}

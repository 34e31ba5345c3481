import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Finding } from '#craft/look/finding.ts';
import { usePattern } from '../../document/use-design.ts';
import { Message } from '../../parts/Message.tsx';
import { Working } from '../../parts/Working.tsx';
import { useJob } from '../../worker/use-job.ts';
import { Line } from './Line.tsx';

/** Look over: what to see to before anything is pricked, as a list that zooms to its place. */
export function Panel() {
  const pattern = usePattern();
  const [job, look] = useJob('look');
  const [chosen, setChosen] = useState<string | null>(null);
  useEffect(() => void look(pattern), [look, pattern]);

  if (job.at === 'work')
    return <Working words="Looking the pattern over" share={job.share} onCancel={job.cancel} />;
  if (job.at === 'broken') return <Message kind="trouble">{job.why}</Message>;
  if (job.at === 'rest') {
    return (
      <Button className="button main" onPress={() => look(pattern)}>
        Look the pattern over
      </Button>
    );
  }
  const { findings } = job.made;
  if (findings.length === 0)
    return <Message kind="good">Nothing to see to. The pattern is ready to be made.</Message>;
  return (
    <ul className="places">
      {findings.map((finding) => (
        <Line
          key={keyOf(finding)}
          finding={finding}
          chosen={keyOf(finding) === chosen}
          onChoose={() => setChosen(keyOf(finding))}
        />
      ))}
    </ul>
  );
}

const keyOf = ({ rule, pins, sentence }: Finding): string => `${rule} ${pins.join(' ')} ${sentence}`;

import { useEffect } from 'react';
import { Button } from 'react-aria-components';
import { growBox } from '#base/geometry/box.ts';
import { usePattern } from '../../document/use-design.ts';
import { Message } from '../../parts/Message.tsx';
import { Working } from '../../parts/Working.tsx';
import { useSheet } from '../../sheet/handle.ts';
import { useJob } from '../../worker/use-job.ts';

const SEVERITY = { fault: 'Fault', warning: 'Warning', note: 'Note' } as const;

/** Look over: what to see to before anything is pricked, as a list that zooms to its place. */
export function Panel() {
  const pattern = usePattern();
  const sheet = useSheet();
  const [job, look] = useJob('look');
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
      {findings.map(({ rule, sentence, severity, at, pins }) => (
        <li key={`${rule} ${pins.join(' ')} ${sentence}`} className={severity}>
          {at ? (
            <Button
              onPress={() => sheet.zoomTo(growBox({ left: at.x, right: at.x, top: at.y, bottom: at.y }, 12))}
            >
              <strong>{SEVERITY[severity]}</strong> {sentence}
            </Button>
          ) : (
            <div className="place">
              <strong>{SEVERITY[severity]}</strong> {sentence}
            </div>
          )}
        </li>
      ))}
    </ul>
  );
}

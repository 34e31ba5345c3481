import { useEffect, useState } from 'react';
import { Button, ProgressBar } from 'react-aria-components';
import { growBox } from '#base/geometry/box.ts';
import type { Finding } from '#craft/look/finding.ts';
import { usePattern } from '../../document/use-design.ts';
import { useSheet } from '../../sheet/handle.ts';
import { runJob } from '../../worker/run.ts';

/** Look over: what to see to before anything is pricked, as a list that zooms to its place. */
export function Panel() {
  const pattern = usePattern();
  const sheet = useSheet();
  const [findings, setFindings] = useState<readonly Finding[] | null>(null);
  const [share, setShare] = useState(0);
  useEffect(() => {
    const stop = new AbortController();
    setFindings(null);
    runJob('look', [pattern], { progress: (_, done) => setShare(done), signal: stop.signal }).then(
      ({ findings }) => setFindings(findings),
      () => {},
    );
    return () => stop.abort();
  }, [pattern]);

  if (findings === null) {
    return (
      <ProgressBar aria-label="Looking the pattern over" value={share * 100} className="progress">
        Looking the pattern over …
      </ProgressBar>
    );
  }
  if (findings.length === 0) return <p>Nothing to see to. The pattern is ready to be made.</p>;
  return (
    <ul className="findings">
      {findings.map(({ sentence, severity, at }, index) => (
        <li key={index} className={severity}>
          {at ? (
            <Button
              onPress={() => sheet.zoomTo(growBox({ left: at.x, right: at.x, top: at.y, bottom: at.y }, 12))}
            >
              {sentence}
            </Button>
          ) : (
            sentence
          )}
        </li>
      ))}
    </ul>
  );
}

import { useState } from 'react';
import { Button } from 'react-aria-components';
import { useWork } from '../document/use-design.ts';
import { announce } from '../parts/announce.ts';
import type { VersionCard } from '../store/database.ts';
import { useDatabase } from '../store/use-database.ts';
import { listVersions, readVersion } from '../store/versions.ts';
import { runJob } from '../worker/run.ts';

/** Earlier states of the open pattern. Going back to one is a step like any other, and can be undone. */
export function Versions() {
  const database = useDatabase();
  const { id, design } = useWork();
  const [versions, setVersions] = useState<readonly VersionCard[] | null>(null);
  const goBack = async (version: VersionCard) => {
    const then = await readVersion(database, version);
    if (!then) return;
    const now = design.state().pattern;
    // Beside the page: two large patterns are long to compare, record by record.
    const change = await runJob('changeBetween', [now, then]);
    const words = 'Went back to an earlier version';
    if (design.state().pattern === now) design.edit(change, words);
    else design.become(then, words);
    announce('The earlier version is here. Undo takes it back.');
  };
  if (!versions) {
    return (
      <Button className="button quiet" onPress={async () => setVersions(await listVersions(database, id))}>
        Earlier versions
      </Button>
    );
  }
  return (
    <section className="offer" aria-label="Earlier versions">
      <h3>Earlier versions</h3>
      {versions.length === 0 && <p>None yet: the first is kept when the pattern is changed.</p>}
      <ul className="places">
        {versions.map((version) => (
          <li key={version.number}>
            <Button onPress={() => goBack(version)}>
              Go back to {new Date(version.saved).toLocaleString()}, {version.pins} pins
            </Button>
          </li>
        ))}
      </ul>
      <Button className="button" onPress={() => setVersions(null)}>
        Put the list away
      </Button>
    </section>
  );
}

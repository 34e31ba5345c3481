import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { Message } from '../parts/Message.tsx';
import type { VersionCard } from '../store/database.ts';
import { createDesign, readPictures } from '../store/designs.ts';
import { useDatabase } from '../store/use-database.ts';
import { listVersions, readVersion } from '../store/versions.ts';
import { go } from './route.ts';

/** In place of a design that cannot be read: its earlier versions, each of which can become a pattern of its own. */
export function DamagedDesign({ id }: { id: string }) {
  const database = useDatabase();
  const [versions, setVersions] = useState<readonly VersionCard[] | null>(null);
  const [trouble, setTrouble] = useState(false);
  useEffect(() => {
    listVersions(database, id).then(setVersions, () => setVersions([]));
  }, [database, id]);
  const open = async (version: VersionCard) => {
    try {
      const pattern = await readVersion(database, version);
      if (!pattern) return setTrouble(true);
      const name = (await database.get('cards', id))?.name ?? 'Pattern';
      const pictures = await readPictures(database, id);
      const fresh = await createDesign(database, { pattern, pictures }, `${name} (earlier version)`);
      go({ at: 'design', id: fresh, stage: '' });
    } catch {
      setTrouble(true);
    }
  };
  return (
    <main className="page">
      <Message kind="trouble">
        What this browser keeps of this pattern is damaged, and was left as it is.{' '}
        {versions?.length
          ? 'Its earlier versions are below: open one, and it goes on the shelf as a pattern of its own.'
          : 'No earlier version of it is left here. Open your last saved file, or bring back a backup.'}
      </Message>
      {trouble && <Message kind="trouble">This version is damaged too. Try the one before it.</Message>}
      {versions && versions.length > 0 && (
        <ul className="places">
          {versions.map((version) => (
            <li key={version.number}>
              <Button onPress={() => open(version)}>
                Open as of {new Date(version.saved).toLocaleString()}, {version.pins} pins
              </Button>
            </li>
          ))}
        </ul>
      )}
      <a className="button" href="#/">
        To the shelf
      </a>
    </main>
  );
}

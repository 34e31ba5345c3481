import { useEffect, useState } from 'react';
import { z } from 'zod';
import example from '../../../examples/rosehip-edging.json?url';
import { Message } from '../parts/Message.tsx';
import { createDesign, listDesigns } from '../store/designs.ts';
import { readSetting, writeSetting } from '../store/settings.ts';
import { useDatabase } from '../store/use-database.ts';
import { runJob } from '../worker/run.ts';
import { addressOf } from './route.ts';

const SETTING = 'example';

/** Puts the example on the shelf, once for each browser, and opens it. */
export function OpenExample() {
  const database = useDatabase();
  const [trouble, setTrouble] = useState(false);
  useEffect(() => {
    let wanted = true;
    (async () => {
      const kept = await readSetting(database, SETTING, z.string());
      if (kept && (await listDesigns(database)).some(({ id }) => id === kept)) return kept;
      const bytes = new Uint8Array(await (await fetch(example)).arrayBuffer());
      const opened = await runJob('open', [bytes]);
      if (!opened.ok) throw new Error(opened.trouble.kind);
      const id = await createDesign(database, opened.value, 'Rosehip edging (example)');
      await writeSetting(database, SETTING, id);
      return id;
    })().then(
      (id) => wanted && location.replace(addressOf({ at: 'design', id, stage: '' })),
      () => setTrouble(true),
    );
    return () => {
      wanted = false;
    };
  }, [database]);
  if (!trouble) return null;
  return (
    <main className="page">
      <Message kind="trouble">The example could not be opened. Load the page anew to try once more.</Message>
      <a className="button" href="#/">
        To the shelf
      </a>
    </main>
  );
}

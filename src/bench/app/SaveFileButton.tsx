import { useState } from 'react';
import { Button } from 'react-aria-components';
import { useWork } from '../document/use-design.ts';
import { fileName } from '../parts/file-name.ts';
import { Message } from '../parts/Message.tsx';
import { saveFile } from '../parts/save-file.ts';
import { runJob } from '../worker/run.ts';

/** Saves the open pattern, with its picture, as one file of its own. */
export function SaveFileButton() {
  const { design, pictures, name } = useWork();
  const [trouble, setTrouble] = useState(false);
  const save = async () => {
    setTrouble(false);
    try {
      const bytes = await runJob('container', [design.state().pattern, new Map(pictures)]);
      await saveFile(`${fileName(name)}.pinlight`, bytes, 'application/zip');
    } catch {
      setTrouble(true);
    }
  };
  return (
    <>
      <Button className="button" onPress={save}>
        Save as a file
      </Button>
      {trouble && <Message kind="trouble">The file could not be made. Try once more.</Message>}
    </>
  );
}

import { useState } from 'react';
import { Button, FileTrigger, Group } from 'react-aria-components';

/** A device that is touched has a camera on its back; one with a mouse hardly ever. */
const hasCamera = matchMedia('(any-pointer: coarse)');

/** The way to a new pattern from paper: a scan is chosen, or the paper photographed. */
export function FromPaper({ take }: { readonly take: (file: File) => void }) {
  const [asked, setAsked] = useState(false);
  const chosen = (files: FileList | null) => files?.[0] && take(files[0]);
  if (!hasCamera.matches) {
    return (
      <FileTrigger acceptedFileTypes={['image/*']} onSelect={chosen}>
        <Button className="button main">From paper</Button>
      </FileTrigger>
    );
  }
  return (
    <>
      <Button className="button main" aria-expanded={asked} onPress={() => setAsked(!asked)}>
        From paper
      </Button>
      {asked && (
        <Group className="buttons" aria-label="From paper">
          <FileTrigger acceptedFileTypes={['image/*']} onSelect={chosen}>
            <Button className="button">Choose a picture</Button>
          </FileTrigger>
          <FileTrigger acceptedFileTypes={['image/*']} defaultCamera="environment" onSelect={chosen}>
            <Button className="button">Photograph the paper</Button>
          </FileTrigger>
        </Group>
      )}
    </>
  );
}

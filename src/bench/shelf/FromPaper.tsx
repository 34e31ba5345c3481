import { useState } from 'react';
import { Button, Group } from 'react-aria-components';
import { FileButton, PICTURES } from '../parts/FileButton.tsx';

/** A device that is touched has a camera on its back; one with a mouse hardly ever. */
const hasCamera = matchMedia('(any-pointer: coarse)');

/** The way to a new pattern from paper: a scan is chosen, or the paper photographed. */
export function FromPaper({ take }: { readonly take: (file: File) => void }) {
  const [asked, setAsked] = useState(false);
  if (!hasCamera.matches)
    return <FileButton words="From paper" look="button main" kinds={PICTURES} take={take} />;
  return (
    <>
      <Button className="button main" aria-expanded={asked} onPress={() => setAsked(!asked)}>
        From paper
      </Button>
      {asked && (
        <Group className="buttons" aria-label="From paper">
          <FileButton words="Choose a picture" kinds={PICTURES} take={take} />
          <FileButton words="Photograph the paper" kinds={PICTURES} camera take={take} />
        </Group>
      )}
    </>
  );
}

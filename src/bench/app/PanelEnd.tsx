import { useRef } from 'react';
import { Button } from 'react-aria-components';
import { About, type AboutAsked } from './About.tsx';
import { SaveFileButton } from './SaveFileButton.tsx';
import { Versions } from './Versions.tsx';

/** What is at the end of every stage's panel: the pattern as a file, what is said of it, and its earlier versions. */
export function PanelEnd({
  about,
  onAbout,
}: {
  readonly about: AboutAsked | null;
  readonly onAbout: (asked: AboutAsked | null) => void;
}) {
  const button = useRef<HTMLButtonElement>(null);
  const putAway = () => {
    onAbout(null);
    button.current?.focus();
  };
  return (
    <div className="stack panel-end">
      <div className="buttons">
        <SaveFileButton />
        <Button
          ref={button}
          className="button quiet"
          aria-expanded={about !== null}
          onPress={() => onAbout(about ? null : { first: null })}
        >
          About this pattern
        </Button>
        <Versions />
      </div>
      {about && <About asked={about} onPutAway={putAway} />}
    </div>
  );
}

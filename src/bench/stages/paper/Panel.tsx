import { useEffect } from 'react';
import { useDesignState, useWork } from '../../document/use-design.ts';
import { Message } from '../../parts/Message.tsx';
import { useSheet } from '../../sheet/handle.ts';
import { FindPins } from './FindPins.tsx';
import { ItsSize } from './ItsSize.tsx';
import './paper.css';

/** Paper: the scan or photograph that the pattern is found on; how large it is; and its pins. */
export function Panel() {
  const { pictures } = useWork();
  const { pattern, editable } = useDesignState();
  const sheet = useSheet();
  const { paper } = pattern;
  useEffect(() => {
    sheet.setDress({ paper: 1, markings: false });
    return () => sheet.setDress({});
  }, [sheet]);
  const picture = paper && pictures.get(paper.entry);
  if (!paper) {
    return (
      <>
        <p>This pattern has no paper: it was drafted, or its file came without a picture.</p>
        <p>To begin from paper, go to the shelf and press “From paper”. That makes a pattern of its own.</p>
        <a className="button" href="#/">
          To the shelf
        </a>
      </>
    );
  }
  if (!picture) {
    return (
      <Message kind="caution">
        The picture of this paper is not here. Open the file that was saved with its picture, ending in
        .pinlight, or begin anew with “From paper” on the shelf.
      </Message>
    );
  }
  return (
    <div className="paper-stage">
      <ItsSize pattern={pattern} paper={paper} picture={picture} editable={editable} />
      <FindPins pattern={pattern} picture={picture} editable={editable} />
    </div>
  );
}

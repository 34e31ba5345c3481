import { FileButton, PICTURES } from '../../parts/FileButton.tsx';

/** The ways to a photo of the card: one that is there already, or the device's camera. Dropping it works as well. */
export function TakePhoto({ again, take }: { readonly again: boolean; readonly take: (file: File) => void }) {
  return (
    <div className="buttons">
      <FileButton
        words={again ? 'Try another photo' : 'Choose a photo'}
        look={again ? 'button' : 'button main'}
        kinds={PICTURES}
        take={take}
      />
      <FileButton words="Photograph the card" kinds={PICTURES} camera take={take} />
    </div>
  );
}

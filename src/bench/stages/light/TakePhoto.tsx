import { Button, FileTrigger } from 'react-aria-components';

/** The ways to a photo of the card: one that is there already, or the device's camera. Dropping it works as well. */
export function TakePhoto({ again, take }: { readonly again: boolean; readonly take: (file: File) => void }) {
  const chosen = (files: FileList | null) => files?.[0] && take(files[0]);
  const look = again ? 'button' : 'button main';
  return (
    <div className="buttons">
      <FileTrigger acceptedFileTypes={['image/*']} onSelect={chosen}>
        <Button className={look}>{again ? 'Try another photo' : 'Choose a photo'}</Button>
      </FileTrigger>
      <FileTrigger acceptedFileTypes={['image/*']} defaultCamera="environment" onSelect={chosen}>
        <Button className="button">Photograph the card</Button>
      </FileTrigger>
    </div>
  );
}

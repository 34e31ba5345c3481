import { Button, FileTrigger } from 'react-aria-components';

/** A button behind which a file is chosen, or taken with the camera of the device. */
export function FileButton({
  words,
  kinds,
  camera = false,
  look = 'button',
  take,
}: {
  readonly words: string;
  /** Which files are offered first; all, where none are named. */
  readonly kinds?: readonly string[];
  readonly camera?: boolean;
  readonly look?: 'button' | 'button main';
  readonly take: (file: File) => void;
}) {
  return (
    <FileTrigger
      {...(kinds && { acceptedFileTypes: kinds })}
      {...(camera && { defaultCamera: 'environment' })}
      onSelect={(files) => files?.[0] && take(files[0])}
    >
      <Button className={look}>{words}</Button>
    </FileTrigger>
  );
}

/** The kinds of files in which paper and cards are seen. */
export const PICTURES = ['image/*'] as const;

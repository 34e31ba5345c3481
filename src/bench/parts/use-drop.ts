import { useEffect } from 'react';

/** Lets a file be dropped anywhere on the page, as a quicker way to what the buttons do. */
export function useDrop(take: (file: File) => void, refuse: (words: string) => void): void {
  useEffect(() => {
    const ended = new AbortController();
    const { signal } = ended;
    const hasFiles = ({ dataTransfer }: DragEvent) => dataTransfer?.types.includes('Files') ?? false;
    const over = (event: DragEvent) => {
      if (!event.dataTransfer || !hasFiles(event)) return;
      event.preventDefault();
      event.dataTransfer.dropEffect = 'copy';
    };
    const drop = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      // Without this the browser would leave the bench and show the file by itself.
      event.preventDefault();
      const files = event.dataTransfer?.files ?? [];
      if (files.length > 1) refuse('These are several files. Drop them one at a time.');
      else if (files[0]) take(files[0]);
    };
    addEventListener('dragover', over, { signal });
    addEventListener('drop', drop, { signal });
    return () => ended.abort();
  }, [take, refuse]);
}

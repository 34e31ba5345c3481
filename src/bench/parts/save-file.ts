/** Hands a file to the person: through the browser's own dialog where it has one, else as a download. */
export async function saveFile(
  name: string,
  bytes: Uint8Array | Blob,
  kind: string,
): Promise<'saved' | 'called-off'> {
  const blob = bytes instanceof Blob ? bytes : new Blob([bytes as BlobPart], { type: kind });
  const pick = (window as { showSaveFilePicker?: (wish: object) => Promise<FileSystemFileHandle> })
    .showSaveFilePicker;
  if (pick) {
    try {
      const handle = await pick({ suggestedName: name });
      const file = await handle.createWritable();
      await file.write(blob);
      await file.close();
      return 'saved';
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return 'called-off';
      // Some frames and browsers have the dialog and may not use it: the download always works.
    }
  }
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return 'saved';
}

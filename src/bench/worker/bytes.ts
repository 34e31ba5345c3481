/** The bytes of files, by the same names. */
export async function bytesOf(files: ReadonlyMap<string, Blob>): Promise<Map<string, Uint8Array>> {
  const bytes = new Map<string, Uint8Array>();
  for (const [name, file] of files) bytes.set(name, new Uint8Array(await file.arrayBuffer()));
  return bytes;
}

/**
 * A file as the store keeps it: by its bytes, since the private windows of some browsers keep no files. Those kept by an
 * earlier bench are still files.
 */
export type KeptFile = Blob | { readonly type: string; readonly bytes: ArrayBuffer };

export const keptFile = async (file: Blob): Promise<KeptFile> => ({
  type: file.type,
  bytes: await file.arrayBuffer(),
});

export const fileOf = (kept: KeptFile): Blob =>
  kept instanceof Blob ? kept : new Blob([kept.bytes], { type: kept.type });

/** Why nothing of a backup can be brought back, or why it cannot be opened as a pattern. Put into sentences by `#jobs/words/backup.ts`. */
export type BackupTrouble =
  /** Something else, such as one pattern's own file or a picture. */
  | { readonly kind: 'not-a-backup' }
  /** A whole shelf, where one pattern is wanted. */
  | { readonly kind: 'is-a-backup' }
  | { readonly kind: 'backup-newer'; readonly version: number; readonly newest: number }
  /** Cut off, or its list of contents cannot be read. */
  | { readonly kind: 'backup-damaged' }
  /** There is more on the shelf than one file takes. */
  | { readonly kind: 'shelf-too-large' }
  /** It claims to hold more than any shelf does. */
  | { readonly kind: 'backup-too-large' };

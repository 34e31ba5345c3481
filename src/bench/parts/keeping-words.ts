/** What is said where the browser clears away what was not used for a week. */
export const A_WEEK = 'This browser may throw your patterns away if Pinlight is not used for seven days.';

/** And what helps. */
export const WHAT_NEXT =
  'Press “Back up everything” on the shelf, and keep the file elsewhere. Or put Pinlight on this device: in the browser, touch Share, then “Add to Home Screen” or “Add to Dock”. There it keeps your patterns. It has a shelf of its own there: back up first, and bring the backup back there.';

const DAY = 24 * 60 * 60 * 1000;

/** 'Changed today at 14:02.', 'Changed 3 days ago.', 'Changed on 3 May 2024.' */
export function whenInWords(at: number, now: number): string {
  const days = Math.round((startOfDay(now) - startOfDay(at)) / DAY);
  const time = new Date(at).toLocaleTimeString(undefined, { hour: '2-digit', minute: '2-digit' });
  if (days <= 0) return `Changed today at ${time}.`;
  if (days === 1) return `Changed yesterday at ${time}.`;
  if (days < 14) return `Changed ${days} days ago.`;
  return `Changed on ${new Date(at).toLocaleDateString(undefined, { dateStyle: 'medium' })}.`;
}

const startOfDay = (at: number): number => new Date(at).setHours(0, 0, 0, 0);

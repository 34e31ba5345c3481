import { quantile, type Span } from './main-thread.ts';

let missed = 0;

/** One line of the table: what, how much, and what it may be at most. */
export function tell(what: string, figure: number, unit: string, limit?: number): void {
  line(what, figure.toFixed(1), unit, limit, limit !== undefined && !(figure < limit));
}

/**
 * One line on spans of work. The limit is held against the time in which the page's own thread was at work, since by
 * the clock other programs on the machine are measured too; both are told.
 */
export function tellSpans(what: string, spans: readonly Span[], share: number, limit?: number): void {
  const own = quantile(
    spans.map((span) => span.own),
    share,
  );
  const clock = quantile(
    spans.map((span) => span.clock),
    share,
  );
  const over = limit !== undefined && !(own < limit);
  line(what, `${own.toFixed(1)} (${clock.toFixed(1)})`, 'ms', limit, over);
}

export const limitsMissed = (): number => missed;

function line(what: string, figure: string, unit: string, limit: number | undefined, over: boolean): void {
  if (over) missed += 1;
  const bound = limit === undefined ? '' : `limit ${limit} ${unit}`;
  console.log(
    `${what.padEnd(60)} ${figure.padStart(15)} ${unit.padEnd(3)} ${bound.padEnd(13)} ${over ? 'MISSED' : ''}`.trimEnd(),
  );
}

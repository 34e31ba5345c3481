import type { Browser, Page } from 'playwright-core';

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds. */
  readonly ts: number;
  readonly dur?: number;
  /** Of `dur`, what this thread itself was at work. */
  readonly tdur?: number;
}

/** Milliseconds by the clock, and of them those in which the page's own thread was at work. */
export interface Span {
  readonly clock: number;
  readonly own: number;
}

/** What a page's main thread did meanwhile, milliseconds. */
export interface MainThread {
  /** The length of each task. */
  readonly tasks: readonly Span[];
  /** What each frame took: all tasks from one frame's beginning to the next. */
  readonly frames: readonly Span[];
  /** From each mark `asked` of the page to its next mark `answered`. */
  readonly answers: readonly Span[];
}

const MARK = 'measured';
const CATEGORIES = ['devtools.timeline', 'disabled-by-default-devtools.timeline', 'blink.user_timing'];

/** Has the browser itself write down what the page's main thread does while `work` goes on. */
export async function watchMainThread(
  browser: Browser,
  page: Page,
  work: () => Promise<unknown>,
): Promise<MainThread> {
  await browser.startTracing(page, { categories: CATEGORIES });
  await page.evaluate((mark) => performance.mark(mark), MARK);
  await work();
  await page.evaluate((mark) => performance.mark(mark), MARK);
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as {
    traceEvents: TraceEvent[];
  };
  return readTrace(traceEvents);
}

function readTrace(events: readonly TraceEvent[]): MainThread {
  const marks = events.filter(({ name }) => name === MARK).sort((one, other) => one.ts - other.ts);
  const [first, last] = [marks[0], marks.at(-1)];
  if (!first || !last) throw new Error('The browser wrote nothing down.');
  const here = events
    .filter(({ pid, tid, ts }) => pid === first.pid && tid === first.tid && ts >= first.ts && ts <= last.ts)
    .sort((one, other) => one.ts - other.ts);
  const tasks = here.filter(({ name, ph }) => name === 'RunTask' && ph === 'X');
  const begins = here.filter(({ name }) => name === 'FireAnimationFrame').map(({ ts }) => ts);
  const starts = begins.filter((ts, at) => at === 0 || ts - begins[at - 1]! > 2000);
  const frames = starts.slice(0, -1).map(() => ({ clock: 0, own: 0 }));
  let frame = 0;
  for (const { ts, dur = 0, tdur = 0 } of tasks) {
    // A frame's task begins a little before its first callback.
    while (frame < starts.length - 1 && ts + dur > starts[frame + 1]!) frame++;
    const into = ts + dur > starts[0]! ? frames[frame] : undefined;
    if (!into) continue;
    into.clock += dur / 1000;
    into.own += tdur / 1000;
  }
  const asked = here.filter(({ name }) => name === 'asked');
  const answered = here.filter(({ name }) => name === 'answered');
  const answers = asked.map(({ ts }, at) => {
    const end = answered[at]?.ts ?? ts;
    const meanwhile = tasks.filter((task) => task.ts + (task.dur ?? 0) > ts && task.ts < end);
    return {
      clock: (end - ts) / 1000,
      own: meanwhile.reduce((sum, { tdur = 0 }) => sum + tdur / 1000, 0),
    };
  });
  return {
    answers,
    tasks: tasks.map(({ dur = 0, tdur = 0 }) => ({ clock: dur / 1000, own: tdur / 1000 })),
    frames,
  };
}

/** The value that a share of all others do not go beyond. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

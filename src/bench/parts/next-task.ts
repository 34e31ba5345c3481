/** Lets the page see to whatever waits before it goes on. */
export const nextTask = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** Milliseconds of work that goes on without a rest. */
const AT_ONCE = 8;

/** To be waited for after each part of a long work: it is a rest where one is due, and nothing otherwise. */
export function restNowAndThen(): () => Promise<void> {
  let begun = performance.now();
  return async () => {
    if (performance.now() - begun < AT_ONCE) return;
    await nextTask();
    begun = performance.now();
  };
}

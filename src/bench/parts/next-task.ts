/** Lets the page see to whatever waits before it goes on. */
export const nextTask = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

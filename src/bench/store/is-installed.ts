/** Whether the bench runs as a program of the device, and not as a page. */
export const isInstalled = (): boolean =>
  matchMedia('(display-mode: standalone)').matches ||
  (navigator as { standalone?: boolean }).standalone === true;

/**
 * Whether a browser clears away what a page keeps once the page was not used for seven days of browsing. All browsers
 * with Apple's engine do so to a page that was not put on the device, whatever they are called (common practice, from
 * memory); nothing but the name that they give themselves tells them.
 */
export const clearsWeekly = (userAgent: string, isInstalled: boolean): boolean =>
  !isInstalled && /AppleWebKit/.test(userAgent) && !/Chrom(e|ium)\/|Android/.test(userAgent);

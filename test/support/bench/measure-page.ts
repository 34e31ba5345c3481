import type { Page } from 'playwright-core';

/** Controls smaller than 44 x 44 CSS pixels, and pairs of them less than 8 apart, one sentence each. */
export const smallOrCrowded = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const LEAST = 44 - 0.1;
    const APART = 8 - 0.1;
    const kinds = 'button, a[href], input, select, textarea, summary, [role="slider"], [role="checkbox"]';
    const targets = new Set<Element>();
    for (const control of document.querySelectorAll(kinds)) {
      // A choice is touched by its words, and a slider by its track.
      const target = control.closest('label, .slider-track') ?? control;
      const { width, height } = target.getBoundingClientRect();
      if (width > 0 && height > 0 && target.checkVisibility()) targets.add(target);
    }
    /** What scrolls an element, and the part of the element that can be seen in it. */
    const seenOf = (target: Element) => {
      let { left, top, right, bottom } = target.getBoundingClientRect();
      let scroller: Element | null = null;
      for (let around = target.parentElement; around; around = around.parentElement) {
        if (getComputedStyle(around).overflow === 'visible') continue;
        scroller ??= around;
        const box = around.getBoundingClientRect();
        [left, right] = [Math.max(left, box.left), Math.min(right, box.right)];
        [top, bottom] = [Math.max(top, box.top), Math.min(bottom, box.bottom)];
      }
      return { scroller, seen: { left, top, right, bottom } };
    };
    const all = [...targets].map((target) => ({
      target,
      box: target.getBoundingClientRect(),
      ...seenOf(target),
    }));
    const nameOf = (target: Element) =>
      `${target.tagName.toLowerCase()} “${target.getAttribute('aria-label') ?? target.textContent?.trim().slice(0, 40)}”`;
    const found: string[] = [];
    for (const { target, box } of all) {
      if (box.width < LEAST || box.height < LEAST) {
        found.push(`${nameOf(target)} is ${box.width.toFixed(1)} x ${box.height.toFixed(1)}`);
      }
    }
    for (const [index, one] of all.entries()) {
      for (const other of all.slice(index + 1)) {
        if (one.target.contains(other.target) || other.target.contains(one.target)) continue;
        // Things that scroll apart from each other only meet where they are seen.
        const together = one.scroller === other.scroller;
        const [a, b] = together ? [one.box, other.box] : [one.seen, other.seen];
        if ([a, b].some(({ left, top, right, bottom }) => left >= right || top >= bottom)) continue;
        const across = Math.max(a.left - b.right, b.left - a.right);
        const down = Math.max(a.top - b.bottom, b.top - a.bottom);
        const apart = Math.max(across, down);
        if (apart < APART)
          found.push(`${nameOf(one.target)} and ${nameOf(other.target)} are ${apart.toFixed(1)} apart`);
      }
    }
    return found;
  });

/** Words that are smaller than 16 CSS pixels. */
export const smallWords = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (words.nextNode()) {
      const { parentElement: element, textContent } = words.currentNode;
      if (!element || !textContent?.trim() || element.closest('script, noscript, .only-heard')) continue;
      const size = Number.parseFloat(getComputedStyle(element).fontSize);
      if (size < 16) found.push(`“${textContent.trim().slice(0, 40)}” has ${size} px`);
    }
    for (const element of document.querySelectorAll('body *')) {
      const { content, fontSize } = getComputedStyle(element, '::before');
      if (!/^(none|normal|"")$/.test(content) && Number.parseFloat(fontSize) < 16) {
        found.push(`what stands before ${element.textContent?.slice(0, 20)} has ${fontSize}`);
      }
    }
    return found;
  });

/**
 * What does not fit on the page's width: words and controls cut off, or only seen by scrolling sideways. Tables may
 * scroll by themselves, since figures in rows and columns cannot be folded.
 */
export const cutOff = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth > clientWidth) found.push(`the page is ${scrollWidth} wide on ${clientWidth}`);
    for (const element of document.querySelectorAll('body *')) {
      if (element.closest('.only-heard, script, noscript, caption, thead, tbody')) continue;
      const style = getComputedStyle(element);
      const isSeen = element.getClientRects().length > 0 && style.clipPath === 'none';
      if (!isSeen || element.closest('svg')) continue;
      const { left, right, width } = element.getBoundingClientRect();
      const nameOf = () =>
        `${element.tagName.toLowerCase()}.${element.className} “${element.textContent?.trim().slice(0, 40)}”`;
      if (
        element.scrollWidth > element.clientWidth + 1 &&
        style.overflowX !== 'visible' &&
        element.tagName !== 'TABLE' &&
        element.clientWidth > 0
      ) {
        found.push(`${nameOf()} holds ${element.scrollWidth} on ${element.clientWidth}`);
      }
      if (width > 1 && (left < -0.5 || right > clientWidth + 0.5)) {
        found.push(`${nameOf()} reaches from ${left.toFixed(0)} to ${right.toFixed(0)}`);
      }
    }
    return found;
  });

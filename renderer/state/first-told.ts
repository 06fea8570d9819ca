import { effect } from '@preact/signals';
import { checkProblem, report } from './check.ts';
import { hostGone } from './happening.ts';

/** What waits for the first findings does not wait longer: a drive may take long to open, or none is there. */
const LATEST_MS = 1500;

/**
 * Ends once the first findings stand on the page. What can wait does: it would be worked out before them by the same
 * thread of the program, and drawn beside them on the same processors.
 */
export const firstTold: Promise<void> = new Promise((resolve) => {
  const latest = setTimeout(resolve, LATEST_MS);
  const stop = effect(() => {
    if (!report.value && checkProblem.value === undefined && hostGone.value === undefined) return;
    clearTimeout(latest);
    // not before they are drawn
    requestAnimationFrame(() => setTimeout(resolve));
    queueMicrotask(() => stop());
  });
});

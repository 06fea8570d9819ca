import axe from 'axe-core';
import type { Page } from 'playwright-core';

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

interface Fault {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** What axe finds wrong with the page as it stands, one line each. */
export async function axeFaults(page: Page): Promise<string[]> {
  // by evaluation: the page's policy lets no script element in
  if (!(await page.evaluate("typeof axe === 'object'"))) await page.evaluate(axe.source);
  const faults = (await page.evaluate(
    // only faults are asked for in full: what passes is found too, but not written out
    `axe.run(document, { runOnly: { type: 'tag', values: ${JSON.stringify(TAGS)} }, resultTypes: ['violations'] }).then((found) =>
      found.violations.map(({ id, help, nodes }) => ({ id, help, nodes: nodes.map(({ html, failureSummary }) => ({ html, failureSummary })) })))`,
  )) as Fault[];
  return faults.map(
    ({ id, help, nodes }) =>
      `${id}: ${help}; ${nodes
        .slice(0, 3)
        .map(({ html, failureSummary }) => `${html.slice(0, 160)} (${failureSummary?.slice(0, 200)})`)
        .join(' | ')}`,
  );
}

/** Pixels that the page is wider than its window. */
export async function sidewaysPx(page: Page): Promise<number> {
  return Number(
    await page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth'),
  );
}

import axe from 'axe-core';
import type { Page } from 'playwright-core';

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

interface Fault {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** The rules whose answer can change with the palette alone: the others read the document and its layout. */
const OF_COLOUR = ['color-contrast', 'link-in-text-block'];

/** What axe finds wrong with the page as it stands, one line each. */
export async function axeFaults(page: Page): Promise<string[]> {
  return run(page, { type: 'tag', values: TAGS });
}

/** What axe finds wrong with the colours of a page whose document and layout were looked at in another palette. */
export async function colourFaults(page: Page): Promise<string[]> {
  return run(page, { type: 'rule', values: OF_COLOUR });
}

async function run(page: Page, runOnly: { type: 'tag' | 'rule'; values: string[] }): Promise<string[]> {
  // by evaluation: the page's policy lets no script element in
  if (!(await page.evaluate("typeof axe === 'object'"))) await page.evaluate(axe.source);
  // only faults are asked for in full, and no style sheet or film is fetched again: there is one sheet and no film
  const options = { runOnly, resultTypes: ['violations'], preload: false };
  const faults = (await page.evaluate(
    `axe.run(document, ${JSON.stringify(options)}).then((found) =>
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

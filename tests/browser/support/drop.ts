import type { Page } from 'playwright-core';
import type { NamedBytes } from './files.ts';

/** Lets go of files over the window, as from a file manager. */
export async function dropFiles(page: Page, files: readonly NamedBytes[]): Promise<void> {
  const told = files.map(({ name, mimeType, buffer }) => ({
    name,
    mimeType,
    base64: buffer.toString('base64'),
  }));
  // as text: what a page alone knows is not known here
  const dataTransfer = await page.evaluateHandle(`(() => {
    const data = new DataTransfer();
    for (const { name, mimeType, base64 } of ${JSON.stringify(told)})
      data.items.add(
        new File([Uint8Array.from(atob(base64), (each) => each.charCodeAt(0))], name, { type: mimeType }),
      );
    return data;
  })()`);
  await page.dispatchEvent('body', 'dragover', { dataTransfer });
  await page.dispatchEvent('body', 'drop', { dataTransfer });
}

import { existsSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { beforeEach, expect, it, vi } from 'vitest';

/** What Electron's printToPDF takes (PrintToPDFOptions in its types): it knows no other word. */
const KNOWN = new Set([
  'landscape',
  'displayHeaderFooter',
  'printBackground',
  'scale',
  'pageSize',
  'margins',
  'pageRanges',
  'headerTemplate',
  'footerTemplate',
  'preferCSSPageSize',
  'generateTaggedPDF',
  'generateDocumentOutline',
]);

const seen = vi.hoisted(() => ({
  window: undefined as Record<string, unknown> | undefined,
  page: '',
  html: '',
  options: {} as Record<string, unknown>,
  destroyed: 0,
  print: async (): Promise<Uint8Array> => new Uint8Array(),
}));

vi.mock('electron', () => ({
  BrowserWindow: class {
    constructor(options: Record<string, unknown>) {
      seen.window = options;
    }
    async loadFile(path: string) {
      seen.page = path;
      seen.html = readFileSync(path, 'utf8');
    }
    webContents = {
      printToPDF: (options: Record<string, unknown>) => {
        seen.options = options;
        return seen.print();
      },
    };
    destroy() {
      seen.destroyed++;
    }
  },
}));

const { printSheet } = await import('../../../main/electron/print-sheet.ts');
const never = () => new AbortController().signal;

beforeEach(() => {
  seen.destroyed = 0;
  seen.print = async () => new TextEncoder().encode('%PDF-1.4');
});

it('prints the page as its own style says, in a window that nobody sees and where nothing runs', async () => {
  expect(await printSheet('<p>sheet</p>', never())).toMatchObject({ ok: true });
  expect(seen.html).toBe('<p>sheet</p>');
  expect(seen.window).toMatchObject({ show: false, webPreferences: { sandbox: true, javascript: false } });
  expect(seen.options).toMatchObject({
    preferCSSPageSize: true,
    printBackground: true,
    margins: { top: 0, bottom: 0, left: 0, right: 0 },
  });
  for (const word of Object.keys(seen.options)) expect(KNOWN).toContain(word);
  expect(seen.destroyed).toBe(1);
  expect(existsSync(dirname(seen.page))).toBe(false);
});

it('says so where it fails, hangs or is cancelled, and leaves neither window nor file behind', async () => {
  const hangs = () => new Promise<Uint8Array>(() => {});
  const stop = new AbortController();
  const cases: readonly [typeof seen.print, () => ReturnType<typeof printSheet>][] = [
    [() => Promise.reject(new Error('no printer')), () => printSheet('', never())],
    [hangs, () => printSheet('', never(), 20)],
    [hangs, () => printSheet('', AbortSignal.abort())],
    [
      hangs,
      () => {
        setTimeout(() => stop.abort(), 5);
        return printSheet('', stop.signal);
      },
    ],
  ];
  for (const [print, run] of cases) {
    seen.print = print;
    seen.destroyed = 0;
    expect(await run()).toMatchObject({
      ok: false,
      error: { message: expect.stringMatching(/^sheet\.pdf is not made: .* Print sheet\.html/) },
    });
    expect(seen.destroyed).toBe(1);
    expect(existsSync(dirname(seen.page))).toBe(false);
  }
});

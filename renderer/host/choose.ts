import type { Reply } from '../../main/contract/reply.ts';
import { type Client, createClient } from './client.ts';
import { httpPipe } from './http.ts';
import { ipcPipe, type PreloadHost } from './ipc.ts';

const KEY = 'lanegauge.key';

declare global {
  interface Window {
    /** there in the program's own window only */
    readonly host?: PreloadHost;
  }
}

/** What of the browser's window is used, so that a test can stand in for it. */
export interface PageWindow {
  readonly host?: PreloadHost;
  readonly location: { readonly origin: string; readonly pathname: string; readonly hash: string };
  readonly history: { replaceState(data: null, unused: string, url: string): void };
  readonly sessionStorage: {
    getItem(name: string): string | null;
    setItem(name: string, value: string): void;
  };
}

/**
 * Finds this page's host: the program's own window when its preload script is there, else the server the page came
 * from. A one-time code in the address is swapped for the page's key and taken out of the address at once.
 */
export async function chooseHost(page: PageWindow): Promise<Reply<Client>> {
  if (page.host) return { ok: true, value: createClient(ipcPipe(page.host)) };
  const { origin, pathname, hash } = page.location;
  const code = hash.slice(1);
  if (code !== '') {
    page.history.replaceState(null, '', pathname);
    const key = await redeem(origin, code);
    if (key !== undefined) page.sessionStorage.setItem(KEY, key);
  }
  const key = page.sessionStorage.getItem(KEY);
  if (key === null) return NO_KEY;
  return { ok: true, value: createClient(httpPipe(origin, key)) };
}

async function redeem(origin: string, code: string): Promise<string | undefined> {
  try {
    const response = await fetch(`${origin}/session`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ code }),
    });
    const answer: unknown = response.ok ? await response.json() : undefined;
    if (typeof answer === 'object' && answer && 'key' in answer) return String(answer.key);
  } catch {
    // the host is gone: said below
  }
  return undefined;
}

const NO_KEY: Reply<never> = {
  ok: false,
  error: {
    code: 'no-key',
    message:
      'This address has been used or is too old. Take a fresh one from the terminal that started Lanegauge (press Enter there), or start it again.',
  },
};

import type { Readable } from 'node:stream';
import { given } from '../../geo/given.ts';
import type { Assets } from '../assets.ts';
import { createDispatch } from '../dispatch.ts';
import type { Backend } from '../services/backend.ts';
import { serveHttp } from './http-host.ts';
import { CODE_LIVES_MS } from './session.ts';

export interface ServeWindowOptions {
  readonly backend: Backend;
  readonly assets: Assets;
  /** one line for the person at the terminal */
  say(line: string): void;
  /** opens the user's browser; absent where there is no display */
  open?(address: string): void;
  /** where Enter asks for a fresh address; absent where nobody can press it */
  readonly keyboard?: Readable;
  /** what is printed while the page is already served; where no page has come by then, the line it ends with and the address follow */
  meanwhile?(): Promise<string>;
  readonly signal: AbortSignal;
  readonly goneAfterMs?: number;
}

/** Serves the window until the signal fires or its page is gone. @returns why it ended */
export async function serveWindow(options: ServeWindowOptions): Promise<'stopped' | 'page gone'> {
  const { backend, say, keyboard, signal } = options;
  let finish: (why: 'stopped' | 'page gone') => void = () => {};
  const ended = new Promise<'stopped' | 'page gone'>((resolve) => {
    finish = resolve;
  });
  let came = false;
  const host = await serveHttp({
    dispatch: createDispatch(backend.services, (error) => console.error(error)),
    uploads: backend.uploads,
    assets: options.assets,
    tileAddress: () => backend.settings().tiles?.address,
    onPage: () => {
      came = true;
    },
    onSpentCode: () => {
      const warning =
        'The address of this window was used a second time. If that was not you, another program has seen it: close the window and start again.';
      say(warning);
      backend.notice(warning);
    },
    onGone: () => finish('page gone'),
    now: () => performance.now(),
    ...given({ goneAfterMs: options.goneAfterMs }),
  });

  // a new address makes the one before void: what was printed stays good until the next is
  let address = '';
  const renewed = () => {
    address = host.newAddress();
    say(address);
  };
  renewed();
  options.open?.(address);
  void options.meanwhile?.().then((line) => {
    if (came || signal.aborted) return;
    say(line);
    say(address);
  });
  const onEnter = renewed;
  keyboard?.on('data', onEnter);
  keyboard?.on('error', () => {});
  // where nobody can ask for a fresh address, the last line printed is always a good one
  const renew = setInterval(() => {
    if (!came && !keyboard) renewed();
  }, CODE_LIVES_MS);
  const stop = () => finish('stopped');
  signal.addEventListener('abort', stop, { once: true });
  if (signal.aborted) stop();

  const why = await ended;
  clearInterval(renew);
  keyboard?.off('data', onEnter);
  keyboard?.pause();
  await host.close();
  await backend.close();
  return why;
}

import { app, ipcMain, type WebContents, type WebFrameMain } from 'electron';
import { fail } from '../../geo/result.ts';
import type { Reply } from '../contract/reply.ts';
import type { Dispatch } from '../dispatch.ts';
import type { Uploads } from '../services/uploads/uploads.ts';
import { ORIGIN } from './scheme.ts';

const FOREIGN: Reply = fail('foreign-page', 'This page may not ask the program for anything.');

/** The calls that are under way. */
export interface Calls {
  /** Asks them all to stop and waits until none runs: one that was writing has then written. */
  stop(): Promise<void>;
}

/** The window's calls. Only the program's own top page is heard. */
export function serveIpc(dispatch: Dispatch, uploads: Uploads): Calls {
  const running = new Map<string, AbortController>();
  const answers = new Set<Promise<Reply>>();
  const watched = new WeakSet<WebContents>();

  ipcMain.handle('call', async (event, id: unknown, name: unknown, request: unknown): Promise<Reply> => {
    if (!isOurs(event.senderFrame)) return FOREIGN;
    if (typeof id !== 'string' || id.length > 64) return fail('bad-request', 'The call carries no name.');
    const { sender } = event;
    stopWithPage(sender);
    const key = `${sender.id}:${id}`;
    if (running.has(key)) return fail('bad-request', 'Two calls carry the same name.');
    const stop = new AbortController();
    running.set(key, stop);
    const answer = dispatch(name, request, {
      onProgress: (progress) => {
        if (!sender.isDestroyed() && !stop.signal.aborted) sender.send('progress', id, progress);
      },
      signal: stop.signal,
    });
    answers.add(answer);
    try {
      return await answer;
    } finally {
      running.delete(key);
      answers.delete(answer);
    }
  });

  ipcMain.on('cancel', (event, id: unknown) => {
    if (isOurs(event.senderFrame)) running.get(`${event.sender.id}:${String(id)}`)?.abort();
  });

  // the preload script alone can send this, for a file the user dropped or chose: the page never names a path
  ipcMain.handle('add-path', async (event, path: unknown): Promise<Reply> => {
    if (!isOurs(event.senderFrame)) return FOREIGN;
    if (typeof path !== 'string' || path === '')
      return fail('no-path', 'That file lies nowhere on this computer. Save it first, then open it.');
    const added = await uploads.addPath(path);
    if (added.ok) app.addRecentDocument(path);
    return added;
  });

  /** A page that is gone or loads anew wants none of its answers any more. */
  function stopWithPage(contents: WebContents): void {
    if (watched.has(contents)) return;
    watched.add(contents);
    const stopAll = () => {
      for (const [key, stop] of running) if (key.startsWith(`${contents.id}:`)) stop.abort();
    };
    contents.on('did-start-navigation', (details) => {
      if (details.isMainFrame && !details.isSameDocument) stopAll();
    });
    contents.on('render-process-gone', stopAll);
    contents.on('destroyed', stopAll);
  }

  return {
    async stop() {
      for (const stop of running.values()) stop.abort();
      await Promise.all(answers);
    },
  };
}

function isOurs(frame: WebFrameMain | null): boolean {
  return frame !== null && frame.parent === null && frame.origin === ORIGIN;
}

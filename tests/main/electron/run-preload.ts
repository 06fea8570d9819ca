import { readFileSync } from 'node:fs';
import type { PreloadHost } from '../../../renderer/host/ipc.ts';
import { eventFrom, type FakeContents, ipcMain, TOP_FRAME } from './fake-electron.ts';

const BUILT = new URL('../../../.build/program/electron/preload.cjs', import.meta.url);

/**
 * Runs the built preload script against a stand-in for the page's side of Electron. Everything that crosses is made
 * JSON and back, which is less than the real pipe allows.
 * @param pathOf what the system knows of a file
 */
export function runPreload(contents: FakeContents, pathOf: (file: File) => string): PreloadHost {
  let exposed: unknown;
  const plain = (value: unknown) => (value === undefined ? undefined : JSON.parse(JSON.stringify(value)));
  const electron = {
    contextBridge: {
      exposeInMainWorld: (name: string, api: unknown) => {
        if (name !== 'host') throw new Error(`exposed as ${name}`);
        exposed = Object.freeze(api);
      },
    },
    webUtils: { getPathForFile: pathOf },
    ipcRenderer: {
      on: (channel: string, listener: (event: unknown, ...words: unknown[]) => void) =>
        contents.on('sent', (sentOn: string, ...words: unknown[]) => {
          if (sentOn === channel) listener({}, ...words.map(plain));
        }),
      invoke: async (channel: string, ...words: unknown[]) =>
        plain(await ipcMain.handlers.get(channel)?.(eventFrom(contents, TOP_FRAME), ...words.map(plain))),
      send: (channel: string, ...words: unknown[]) =>
        ipcMain.emit(channel, eventFrom(contents, TOP_FRAME), ...words.map(plain)),
    },
  };
  const script = new Function('require', 'exports', readFileSync(BUILT, 'utf8'));
  script((name: string) => {
    if (name !== 'electron') throw new Error(`a sandboxed script cannot load ${name}`);
    return electron;
  }, {});
  return exposed as PreloadHost;
}

// Runs sandboxed before the page: one file, no imports but Electron's own. What it exposes is frozen by the bridge.
import electron = require('electron');

const { contextBridge, ipcRenderer, webUtils } = electron;

const listeners = new Map<string, (progress: unknown) => void>();

ipcRenderer.on('progress', (_event, id: string, progress: unknown) => {
  listeners.get(id)?.(progress);
});

contextBridge.exposeInMainWorld('host', {
  async call(
    id: string,
    name: string,
    request: unknown,
    onProgress: (progress: unknown) => void,
  ): Promise<unknown> {
    listeners.set(id, onProgress);
    try {
      return await ipcRenderer.invoke('call', id, name, request);
    } finally {
      listeners.delete(id);
    }
  },
  cancel(id: string): void {
    ipcRenderer.send('cancel', id);
  },
  /** A path is read from a real file only: the page cannot make one up. */
  addFile(file: File): Promise<unknown> {
    return ipcRenderer.invoke('add-path', webUtils.getPathForFile(file));
  },
});

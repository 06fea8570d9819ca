import type { Reply } from '../../main/contract/reply.ts';
import type { Pipe } from './client.ts';

/** What the preload script puts into the page. */
export interface PreloadHost {
  call(id: string, name: string, request: unknown, onProgress: (progress: unknown) => void): Promise<unknown>;
  cancel(id: string): void;
  addFile(file: File): Promise<unknown>;
}

/** The pipe inside the program's own window. */
export function ipcPipe(host: PreloadHost): Pipe {
  return {
    async call(name, request, onProgress, signal) {
      const id = crypto.randomUUID();
      const cancel = () => host.cancel(id);
      signal.addEventListener('abort', cancel, { once: true });
      try {
        return (await host.call(id, name, request, onProgress)) as Reply;
      } finally {
        signal.removeEventListener('abort', cancel);
      }
    },
    addFile: async (file) => (await host.addFile(file)) as Reply,
  };
}

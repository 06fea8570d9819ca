import type { CallName, ProgressOf, RequestOf, ValueOf } from '../../main/contract/calls.ts';
import { MAP_MAX_BYTES } from '../../main/contract/limits.ts';
import type { Reply } from '../../main/contract/reply.ts';
import type { AddedFile } from '../../main/contract/source.ts';

/** The whole of what differs between the hosts: how a question gets across. It may reject; the client does not. */
export interface Pipe {
  call(
    name: string,
    request: unknown,
    onProgress: (progress: unknown) => void,
    signal: AbortSignal,
  ): Promise<Reply>;
  /** Hands a file of the page to the host. */
  addFile(file: File, signal: AbortSignal): Promise<Reply>;
}

export interface CallOptions<K extends CallName> {
  readonly onProgress?: (progress: ProgressOf<K>) => void;
  readonly signal?: AbortSignal;
}

/** The host as the page sees it. Nothing here throws or rejects: whatever happens is a reply. */
export interface Client {
  call<K extends CallName>(
    name: K,
    request: RequestOf<K>,
    options?: CallOptions<K>,
  ): Promise<Reply<ValueOf<K>>>;
  addFile(file: File, signal?: AbortSignal): Promise<Reply<AddedFile>>;
}

const NEVER = new AbortController().signal;

export function createClient(pipe: Pipe): Client {
  return {
    call: (name, request, { onProgress, signal = NEVER } = {}) =>
      settle(
        // the host answers by the same table that these types come from
        () => pipe.call(name, request, (progress) => onProgress?.(progress as never), signal),
        signal,
      ),
    addFile: async (file, signal = NEVER) =>
      file.size > MAP_MAX_BYTES ? tooLarge(file) : settle(() => pipe.addFile(file, signal), signal),
  };
}

async function settle<T>(ask: () => Promise<Reply>, signal: AbortSignal): Promise<Reply<T>> {
  if (signal.aborted) return CANCELLED;
  try {
    return (await ask()) as Reply<T>;
  } catch {
    return signal.aborted ? CANCELLED : GONE;
  }
}

function tooLarge({ name }: File): Reply<never> {
  const message = `${name} has more than ${MAP_MAX_BYTES / 1024 ** 3} GiB. Is it the right file?`;
  return { ok: false, error: { code: 'too-large', message } };
}

const CANCELLED: Reply<never> = { ok: false, error: { code: 'cancelled', message: 'Cancelled.' } };

const GONE: Reply<never> = {
  ok: false,
  error: {
    code: 'host-gone',
    message: 'The program behind this window does not answer any more. Close the window and start it again.',
  },
};

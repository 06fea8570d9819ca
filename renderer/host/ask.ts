import type { CallName, RequestOf, ValueOf } from '../../main/contract/calls.ts';
import type { Reply } from '../../main/contract/reply.ts';
import type { CallOptions, Client } from '../host/client.ts';

let client: Client | undefined;

/** Binds the page to its host, once, before anything is asked. */
export function setHost(found: Client): void {
  client = found;
}

/** Asks the host. Never throws or rejects. */
export async function ask<K extends CallName>(
  name: K,
  request: RequestOf<K>,
  options?: CallOptions<K>,
): Promise<Reply<ValueOf<K>>> {
  return client ? client.call(name, request, options) : NO_HOST;
}

/** Hands a file of the page to the host. */
export const addFile: Client['addFile'] = async (file, signal) =>
  client ? client.addFile(file, signal) : NO_HOST;

const NO_HOST: Reply<never> = {
  ok: false,
  error: {
    code: 'no-host',
    message: 'The window has no program behind it. Close it and start Lanegauge again.',
  },
};

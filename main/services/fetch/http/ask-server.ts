import type { IncomingHttpHeaders, IncomingMessage } from 'node:http';
import { request as plainRequest } from 'node:http';
import { request as secureRequest } from 'node:https';
import { given } from '../../../../geo/given.ts';
import { ok, type Result } from '../../../../geo/result.ts';
import { PROGRAM } from '../../../version.ts';
import { mayNotAsk } from './address.ts';
import { Faulted, type HttpFault, httpFault } from './fault.ts';
import { type MostBytes, NotTaken, type Take, type TakenIn, takeIn } from './take-in.ts';
import { troubleOf } from './trouble-of.ts';
import { type Patience, Watch } from './watch.ts';

/** Program and version, and nothing of whoever uses it. */
export const USER_AGENT = PROGRAM.replace(' ', '/');

const MOST_REDIRECTS = 5;

export interface Ask {
  /** the address that the user agreed to have asked: its host alone is asked, and http only where it is http */
  readonly server: URL;
  /** what is asked of it; the address itself where not given */
  readonly url?: URL;
  readonly method?: 'GET' | 'HEAD' | 'POST';
  /** of a POST, as a form: name → value */
  readonly form?: Readonly<Record<string, string>>;
  readonly headers?: Readonly<Record<string, string>>;
  /** gzip is for text; a file that is counted, hashed and resumed by its own bytes is asked for plain */
  readonly packing: 'gzip' | 'plain';
  readonly patience: Patience;
  readonly most: MostBytes;
  readonly signal?: AbortSignal;
  /** bytes of the body over the line so far */
  onBytes?(packedBytes: number): void;
}

export interface Head {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  /** after redirects */
  readonly url: URL;
}

export interface Answer extends Head, TakenIn {}

/**
 * Asks a server once and takes in its whole answer, whatever the status.
 *
 * Node's own fetch is not used: it lets a gzip that is cut and a length that lies pass for a whole answer, turns a
 * redirected POST into a GET and calls itself "node", which servers refuse.
 * @param begin told of status and headers; gives what takes the body, or nothing to pass it over
 * @returns every failure of server and line as a fault. What `begin` and its taker throw is thrown on.
 */
export async function askServer(
  ask: Ask,
  begin: (head: Head) => Take | undefined,
): Promise<Result<Answer, HttpFault>> {
  const { host } = ask.server;
  const url = ask.url ?? ask.server;
  const why = mayNotAsk(url, ask.server);
  if (why !== undefined) return { ok: false, error: httpFault(host, { kind: 'address', why, to: url.href }) };
  const watch = new Watch(ask.patience, ask.signal);
  let bytes = 0;
  try {
    const { response, at } = await follow(ask, url, watch);
    const head: Head = { status: response.statusCode ?? 0, headers: response.headers, url: at };
    const taken = await takeIn(response, begin(head) ?? (() => {}), {
      most: ask.most,
      watch,
      isHead: ask.method === 'HEAD',
      onBytes: (packed) => {
        bytes = packed;
        ask.onBytes?.(packed);
      },
    });
    return ok({ ...head, ...taken });
  } catch (thrown) {
    if (thrown instanceof NotTaken) throw thrown.cause;
    const trouble = (watch.fault ?? (thrown instanceof Faulted ? thrown : undefined))?.trouble;
    return { ok: false, error: httpFault(host, trouble ?? troubleOf(thrown, bytes)) };
  } finally {
    watch.close();
  }
}

/** Follows redirects within the server until something answers. */
async function follow(
  ask: Ask,
  start: URL,
  watch: Watch,
): Promise<{ readonly response: IncomingMessage; readonly at: URL }> {
  let at = start;
  let method = ask.method ?? 'GET';
  for (let count = 0; count <= MOST_REDIRECTS; count++) {
    const response = await send(ask, at, { method, watch });
    const { location } = response.headers;
    const status = response.statusCode ?? 0;
    if (![301, 302, 303, 307, 308].includes(status) || location === undefined) return { response, at };
    response.destroy();
    if (!URL.canParse(location, at.href))
      throw new Faulted({ kind: 'redirect', why: 'scheme', to: location });
    const to = new URL(location, at);
    const why = mayNotAsk(to, at);
    if (why !== undefined) throw new Faulted({ kind: 'redirect', why, to: to.href });
    at = to;
    // only "see other" means another way of asking; a question is asked again as it was
    if (status === 303 && method === 'POST') method = 'GET';
  }
  throw new Faulted({ kind: 'redirects', count: MOST_REDIRECTS });
}

function send(
  ask: Ask,
  url: URL,
  { method, watch }: { readonly method: string; readonly watch: Watch },
): Promise<IncomingMessage> {
  const body = method === 'POST' ? new URLSearchParams({ ...ask.form }).toString() : undefined;
  const headers = {
    'User-Agent': USER_AGENT,
    Accept: '*/*',
    'Accept-Encoding': ask.packing === 'gzip' ? 'gzip' : 'identity',
    ...ask.headers,
    ...given({
      'Content-Type': body === undefined ? undefined : 'application/x-www-form-urlencoded',
      'Content-Length': body === undefined ? undefined : Buffer.byteLength(body),
    }),
  };
  return new Promise((resolve, reject) => {
    const secure = url.protocol === 'https:';
    const request = (secure ? secureRequest : plainRequest)(url, { method, headers, agent: false });
    request.on('socket', (socket) => socket.once(secure ? 'secureConnect' : 'connect', () => watch.heard()));
    request.on('response', resolve);
    request.on('error', reject);
    watch.holds(request);
    request.end(body);
  });
}

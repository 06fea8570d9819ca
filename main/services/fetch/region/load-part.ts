import { given } from '../../../../geo/given.ts';
import { fail, ok, type Problem, type Result } from '../../../../geo/result.ts';
import { printBytes } from '../../../../geo/units/print.ts';
import { messageOf } from '../../files/system-error.ts';
import { type Answer, askServer } from '../http/ask-server.ts';
import type { HttpFault } from '../http/fault.ts';
import { retryAfterMs } from '../http/retry-after.ts';
import type { MapAsk } from './map-ask.ts';
import type { PartFile } from './part-file.ts';
import { sayStatus } from './server-files.ts';
import { FromTheStart, Refused, takeMap } from './take-map.ts';

/** Pauses before a server is asked once more for what it did not give; begun again whenever some more has come. */
const PAUSES_MS = [2_000, 10_000, 30_000, 60_000];
/** A server that asks to be left alone for longer is left alone. */
const MOST_PAUSE_MS = 300_000;
const MOST_BYTES = 200e9;

/** How one question for the rest of a file ended. */
type Outcome =
  | { readonly kind: 'whole' }
  | { readonly kind: 'again'; readonly problem: Problem; readonly pauseMs?: number }
  | { readonly kind: 'from the start' }
  | { readonly kind: 'failed'; readonly problem: Problem };

/** What may pass by itself: a connection, not an address or a certificate. */
const PASSING: ReadonlySet<HttpFault['trouble']['kind']> = new Set(['broken', 'slow', 'unreachable']);
const PASSING_STATUS: ReadonlySet<number> = new Set([429, 500, 502, 503, 504]);

/**
 * Loads what of a file is not here yet, over one connection at a time; where it breaks off, on from there. What has come
 * stays, whatever happens.
 */
export async function loadPart(ask: MapAsk, part: PartFile, proved: boolean): Promise<Result<undefined>> {
  let pauses = 0;
  let restarts = 0;
  for (;;) {
    const before = part.bytes;
    const outcome = await loadOnce(ask, part, proved);
    if (outcome.kind === 'whole') return ok(undefined);
    if (outcome.kind === 'failed') return { ok: false, error: outcome.problem };
    if (outcome.kind === 'from the start') {
      // a server that answers so to a question for the whole as well answers no question
      if (restarts++ > 0)
        return fail('map-odd', sayStatus(ask.server.host, 416, `the map of ${ask.region.name}`));
      await part.restart({ url: ask.region.url });
      continue;
    }
    if (part.bytes > before) pauses = 0;
    const pauseMs = PAUSES_MS[pauses++];
    if (pauseMs === undefined) return { ok: false, error: withKept(outcome.problem, part) };
    try {
      await ask.wait(Math.max(pauseMs, outcome.pauseMs ?? 0), ask.signal);
    } catch {
      return { ok: false, error: withKept({ code: 'http.cancelled', message: 'Cancelled.' }, part) };
    }
  }
}

async function loadOnce(ask: MapAsk, part: PartFile, proved: boolean): Promise<Outcome> {
  const { server, region, patience } = ask;
  const taking = oneAtATime();
  try {
    const answer = await askServer(
      {
        server,
        url: new URL(region.url),
        packing: 'plain',
        patience,
        most: { packed: MOST_BYTES, unpacked: MOST_BYTES },
        headers: goOnFrom(part),
        ...given({ signal: ask.signal }),
      },
      (head) => {
        const take = takeMap(ask, part, head);
        return take && ((chunk) => taking.take(() => take(chunk)));
      },
    );
    await taking.end();
    if (!answer.ok) {
      const kind = PASSING.has(answer.error.trouble.kind) ? 'again' : 'failed';
      return { kind, problem: kind === 'failed' ? withKept(answer.error, part) : answer.error };
    }
    return judge(ask, part, { answer: answer.value, proved });
  } catch (error) {
    await taking.end();
    return failed(ask, part, error);
  }
}

/**
 * Keeps hold of what is being written: a connection that breaks ends a request at once, with a piece still on its way to
 * the disk. Nothing may be asked for, counted or closed before it is there.
 */
function oneAtATime() {
  let writing: Promise<void> = Promise.resolve();
  let ended = false;
  return {
    take(work: () => Promise<void>): Promise<void> {
      if (!ended) writing = work();
      return writing;
    },
    async end(): Promise<void> {
      ended = true;
      // whoever asked hears what went wrong; here only that it is over
      await writing.catch(() => {});
    },
  };
}

/** The rest alone, if it is still the same file; else the server sends it whole. */
function goOnFrom({ bytes, etag }: PartFile): Record<string, string> {
  return bytes > 0 && etag !== undefined ? { Range: `bytes=${bytes}-`, 'If-Range': etag } : {};
}

function judge(
  ask: MapAsk,
  part: PartFile,
  { answer, proved }: { readonly answer: Answer; readonly proved: boolean },
): Outcome {
  const { server, region } = ask;
  const { status, headers } = answer;
  const what = `the map of ${region.name}`;
  if (status === 416)
    return headers['content-range'] === `bytes */${part.bytes}` && part.bytes > 0
      ? { kind: 'whole' }
      : { kind: 'from the start' };
  if (status !== 200 && status !== 206) {
    const problem = { code: `map-status-${status}`, message: sayStatus(server.host, status, what) };
    if (!PASSING_STATUS.has(status)) return { kind: 'failed', problem: withKept(problem, part) };
    const pauseMs = retryAfterMs(headers['retry-after'], ask.nowMs());
    if (pauseMs !== undefined && pauseMs > MOST_PAUSE_MS) {
      const message = `${problem.message} It asks to wait ${Math.ceil(pauseMs / 60_000)} min.`;
      return { kind: 'failed', problem: withKept({ ...problem, message }, part) };
    }
    return { kind: 'again', problem, ...given({ pauseMs }) };
  }
  if (part.bytes === 0)
    return {
      kind: 'failed',
      problem: {
        code: 'map-empty',
        message: `${server.host} sent ${what} without anything in it. Try again later.`,
      },
    };
  const { totalBytes = part.bytes } = part;
  // a checksum tells what neither a length nor the end of the connection does
  if (part.bytes < totalBytes || (!answer.endProved && !proved))
    return {
      kind: 'again',
      problem: {
        code: 'map-short',
        message: `${server.host} ended ${what} after ${printBytes(part.bytes)}, and nothing tells that this is all of it.`,
      },
    };
  return { kind: 'whole' };
}

function failed(ask: MapAsk, part: PartFile, error: unknown): Outcome {
  if (error instanceof FromTheStart) return { kind: 'from the start' };
  if (error instanceof Refused) return { kind: 'failed', problem: withKept(error.problem, part) };
  const message = `The map of ${ask.region.name} could not be written in ${ask.folder}: ${messageOf(error)}. Make room there, or see that it can be written to.`;
  return { kind: 'failed', problem: withKept({ code: 'map-unwritable', message }, part) };
}

/** A failure, and what of the file stays for another time. */
function withKept({ code, message }: Problem, { bytes, etag }: PartFile): Problem {
  if (bytes === 0 || etag === undefined) return { code, message };
  return {
    code,
    message: `${message} What has come (${printBytes(bytes)}) is kept, and fetching goes on from there.`,
  };
}

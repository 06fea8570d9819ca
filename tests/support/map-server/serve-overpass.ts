import type { MapInMemory } from './map-in-memory.ts';
import { status, whole } from './misbehave.ts';
import { parseQuery, type Query } from './parse-query.ts';
import { type Answer, runQuery } from './run-query.ts';
import { type Asked, type Reply, type ServedHere, type ServeOptions, serveHere } from './serve.ts';

/** One question, and which one it is, counted from 0. */
export interface Question {
  readonly text: string;
  readonly query: Query;
  readonly number: number;
}

export interface OverpassOptions extends ServeOptions {
  readonly baseDate?: string;
  /** how this one is answered instead; undefined: truly */
  behave?(question: Question, truly: () => Answer): Reply | undefined;
  /** of the status page */
  readonly status?: string;
}

export interface ServedOverpass extends ServedHere {
  /** its interpreter's address */
  readonly address: URL;
  /** the questions so far, as text */
  questions(): string[];
}

export const BASE_DATE = '2026-11-20T00:00:00Z';

/** An invented Overpass server on 127.0.0.1 that answers truly from a map, or as it is told to. */
export async function serveOverpass(
  map: MapInMemory,
  options: OverpassOptions = {},
): Promise<ServedOverpass> {
  let count = 0;
  const reply: Reply = (response, asked) => {
    if (asked.path === '/api/status')
      return status(200, options.status ?? 'Rate limit: 2\n2 slots available now.\n')(response, asked);
    const text = questionOf(asked);
    if (text === undefined) return status(404, 'nothing here')(response, asked);
    const query = parseQuery(text);
    const truly = () => runQuery(map, query, options.baseDate ?? BASE_DATE);
    const other = options.behave?.({ text, query, number: count++ }, truly);
    return (other ?? json(truly()))(response, asked);
  };
  const served = await serveHere(reply, options);
  return {
    ...served,
    address: new URL(`${served.origin}/api/interpreter`),
    questions: () => served.asked.flatMap((asked) => questionOf(asked) ?? []),
  };
}

export function json(answer: Answer): Reply {
  return whole(JSON.stringify(answer));
}

function questionOf({ method, path, body }: Asked): string | undefined {
  if (method !== 'POST' || path !== '/api/interpreter') return undefined;
  return new URLSearchParams(body).get('data') ?? undefined;
}

import type { Budget } from '../../../../geo/fetch/line/query.ts';
import { type LineAnswer, readAnswer } from '../../../../geo/fetch/line/read-answer.ts';
import { given } from '../../../../geo/given.ts';
import { assertNever, fail, type Problem } from '../../../../geo/result.ts';
import { clip } from '../../../../geo/units/text.ts';
import { askForText } from '../http/ask-for-text.ts';
import type { HttpFault } from '../http/fault.ts';
import { retryAfterMs } from '../http/retry-after.ts';
import { sayPage } from '../http/say-page.ts';
import { cameOf } from './say-came.ts';
import { refusedSentence } from './say-refusal.ts';

/** What became of one question, by what is to be done next. */
export type Outcome =
  | { readonly is: 'answer'; readonly answer: LineAnswer; readonly text: string }
  /** too much for the server: ask for less at once */
  | { readonly is: 'too much'; readonly problem: Problem }
  /** may pass; `place`: it had no place free, which says nothing of the question */
  | {
      readonly is: 'busy';
      readonly of: 'place' | 'server';
      readonly problem: Problem;
      /** what came back, short: `answered 504` */
      readonly came: string;
      readonly leastMs?: number;
    }
  /** never heals by itself */
  | { readonly is: 'refused'; readonly problem: Problem }
  | { readonly is: 'cancelled' };

export interface Question {
  readonly server: URL;
  readonly text: string;
  readonly budget: Budget;
  readonly now: Date;
  /** no longer than this, all in all */
  readonly mostMs?: number;
  readonly signal?: AbortSignal;
  /** bytes over the line so far */
  onBytes?(bytes: number): void;
}

/** A server may keep a question in its queue before it begins, and what stands before it may buffer the answer. */
const QUEUE_MS = 20_000;
/** Ten times what a piece of a city holds; larger answers are asked for in parts. */
const MOST = { packed: 12_000_000, unpacked: 32_000_000 };
/** A day ahead is a time zone gone wrong; more is no date. */
const AHEAD_MS = 24 * 3600_000;

/** Asks an interpreter one question, once, and judges what came by its contents. */
export async function askInterpreter(question: Question): Promise<Outcome> {
  const { server, text, budget, signal } = question;
  const silenceMs = budget.timeoutS * 1000 + QUEUE_MS;
  const asked = await askForText({
    server,
    method: 'POST',
    form: { data: text },
    packing: 'gzip',
    patience: {
      connectMs: 20_000,
      silenceMs,
      totalMs: Math.min(silenceMs + 240_000, question.mostMs ?? Infinity),
    },
    most: MOST,
    ...given({ signal }),
    onBytes: (bytes) => question.onBytes?.(bytes),
  });
  if (!asked.ok) return judgeFault(asked.error);
  const { status, headers } = asked.value;
  if (status === 200) return judgeText(question, asked.value.text);
  const { host } = server;
  const leastMs = retryAfterMs(headers['retry-after'], question.now.getTime());
  const asks = leastMs === undefined ? '' : ` It asks to wait ${Math.ceil(leastMs / 60_000)} min.`;
  if (status === 429) {
    const problem = problemOf('no-place', `${host} has no place free for another question now.${asks}`);
    return { is: 'busy', of: 'place', problem, came: 'has no place free (429)', ...given({ leastMs }) };
  }
  // who stands between wants a login first (RFC 6585, 6)
  if (status === 511) return { is: 'refused', problem: problemOf('page', sayPage(host, 'map data')) };
  if (status >= 500 || status === 408) {
    const problem = problemOf('busy', `${host} is too busy or out of order (${status}).${asks}`);
    return { is: 'busy', of: 'server', problem, came: `answered ${status}`, ...given({ leastMs }) };
  }
  return { is: 'refused', problem: refusedSentence(host, status, asked.value.text) };
}

function judgeText({ server, now }: Question, text: string): Outcome {
  const { host } = server;
  const reading = readAnswer(text);
  switch (reading.kind) {
    case 'remark':
      return {
        is: 'too much',
        problem: problemOf(
          'remark',
          `${host} gave up part-way ("${reading.said}"), on smaller pieces too: it lacks time or memory. Try again later, fetch by region, or use another server.`,
        ),
      };
    case 'page':
      return { is: 'refused', problem: problemOf('page', sayPage(host, 'map data')) };
    case 'error': {
      const problem = problemOf('error', `${host} tells of an error ("${reading.said}"). Try again later.`);
      return { is: 'busy', of: 'server', problem, came: `tells of an error ("${clip(reading.said, 60)}")` };
    }
    case 'empty': {
      const problem = problemOf('empty', `The answer of ${host} is empty. Try again later.`);
      return { is: 'busy', of: 'server', problem, came: 'sent an empty answer' };
    }
    case 'cut': {
      const problem = problemOf('cut', `The answer of ${host} breaks off.`);
      return { is: 'busy', of: 'server', problem, came: 'sent an answer that breaks off' };
    }
    case 'garbled': {
      const message = `What ${host} sent is no map data: ${clip(text, 60)}. Look at the server's address.`;
      return { is: 'busy', of: 'server', problem: problemOf('garbled', message), came: 'sent no map data' };
    }
    case 'foreign': {
      const message = `${host} answers, but not with map data: ${clip(text, 60)}. Look at its address; an Overpass server's ends in /api/interpreter.`;
      return { is: 'refused', problem: problemOf('foreign', message) };
    }
    case 'answer': {
      const { baseDate } = reading.answer;
      if (baseDate !== undefined && Date.parse(baseDate) > now.getTime() + AHEAD_MS) {
        const message = `${host} says that its map is of ${baseDate.slice(0, 10)}, a day yet to come. Look at this computer's date, or use another server.`;
        return { is: 'refused', problem: problemOf('future', message) };
      }
      return { is: 'answer', answer: reading.answer, text };
    }
    default:
      return assertNever(reading);
  }
}

/** What a failure on the line means for what comes next. */
function judgeFault(fault: HttpFault): Outcome {
  switch (fault.trouble.kind) {
    case 'cancelled':
      return { is: 'cancelled' };
    case 'large':
      return { is: 'too much', problem: fault };
    case 'nameless':
    case 'unreachable':
    case 'slow':
    case 'broken':
    case 'cut':
    case 'packing':
    case 'garbled':
      return { is: 'busy', of: 'server', problem: fault, came: cameOf(fault.trouble) };
    case 'address':
    case 'redirect':
    case 'redirects':
    case 'certificate':
      return { is: 'refused', problem: fault };
    default:
      return assertNever(fault.trouble);
  }
}

function problemOf(code: string, message: string): Problem {
  return fail(`line.${code}`, message).error;
}

import { holdsRoad } from '../../../../geo/fetch/line/holds-road.ts';
import type { Span } from '../../../../geo/fetch/line/piece.ts';
import type { Budget } from '../../../../geo/fetch/line/query.ts';
import { type LineAnswer, readAnswer } from '../../../../geo/fetch/line/read-answer.ts';
import { given } from '../../../../geo/given.ts';
import { fail, ok, type Problem, type Result } from '../../../../geo/result.ts';
import { messageOf } from '../../files/system-error.ts';
import type { AskedToday } from '../asked-today.ts';
import { askAlone } from '../one-question.ts';
import type { Pace } from '../pace.ts';
import { askInterpreter, type Outcome } from './ask-interpreter.ts';
import { countriesIn } from './countries-in.ts';
import { type Job, partsOf, questionOf, spansOf } from './job.ts';
import { type KeptAnswers, keyOf } from './kept-answers.ts';
import { isEnough, MOST_VAIN_MS, PAUSE_MS } from './manners.ts';
import { askStatus, waitMs } from './wait-before-again.ts';

/** What is there of one question. */
export interface Had {
  readonly key: string;
  readonly baseDate?: string;
  readonly unfit: number;
}

/** A part of the drive whose map could not be had, and why. */
export interface NotHad extends Span {
  readonly why: 'no road' | 'too much' | 'given up';
}

export interface RunOutcome {
  readonly had: readonly Had[];
  readonly notHad: readonly NotHad[];
  /** whether the server told which areas hold the drive */
  readonly areasTold: boolean;
  /** ISO 3166-1 codes of countries that it named */
  readonly countries: readonly string[];
  /** what the server said last, where it was given up before all was asked */
  readonly gaveUp?: Problem;
}

export interface RunProgress {
  /** questions answered, those from an earlier time among them, and how many there are as far as known */
  readonly done: number;
  readonly of: number;
  /** over the line, this time */
  readonly bytes: number;
  /** left out before anything came to reckon it from, and while the server keeps us waiting */
  readonly secondsLeft?: number;
  /** which time in a row the question under way is asked, of `MOST_TRIES` */
  readonly tries: number;
  /** set while it waits for the server: how long, and what came back */
  readonly waiting?: { readonly seconds: number; readonly came: string };
}

export interface RunTools {
  readonly server: URL;
  /** where what is fetched is kept */
  readonly folder: string;
  readonly kept: KeptAnswers;
  readonly asked: AskedToday;
  readonly pace: Pace;
  readonly signal?: AbortSignal;
  onProgress?(progress: RunProgress): void;
}

const FULL: Budget = { timeoutS: 60, maxBytes: 128 * 1024 ** 2 };
const LEAST: Budget = { timeoutS: 10, maxBytes: 16 * 1024 ** 2 };
/** So many answers without any road, and nothing else: the server holds another part of the Earth. */
const MOST_BARE = 4;
/** A piece of 25 km is small enough after five halvings; a server that cannot answer for two such in a row cannot at all. */
const MOST_TOO_MUCH = 12;

/** Asks all that is to be asked, one question after the other, until it is there, given up, refused or cancelled. */
export class LineRun {
  private readonly tools: RunTools;
  private queue: Job[];
  private readonly had: Had[] = [];
  private readonly notHad: NotHad[] = [];
  private readonly countries = new Set<string>();
  private budget = FULL;
  private areasLost = false;
  private hadPieces = 0;
  /** what the server said when it last gave up on a piece */
  private lastProblem: Problem | undefined;
  private done = 0;
  /** questions asked this time, and those of them that brought what was asked for */
  private asks = 0;
  private held = 0;
  private spentMs = 0;
  private bytes = 0;
  private failedInARow = 0;
  private lastAnsweredMs: number;
  private tooMuchInARow = 0;

  constructor(jobs: readonly Job[], tools: RunTools) {
    this.queue = [...jobs];
    this.tools = tools;
    this.lastAnsweredMs = tools.pace.now().getTime();
  }

  async run(): Promise<Result<RunOutcome>> {
    const { signal } = this.tools;
    for (let job = this.queue.shift(); job !== undefined; job = this.queue.shift()) {
      if (signal?.aborted) return CANCELLED;
      this.tell();
      if (await this.fromKept(job)) continue;
      const stopped = await this.ask(job);
      if (stopped === 'cancelled') return CANCELLED;
      if (stopped?.is === 'refused') return { ok: false, error: stopped.problem };
      if (stopped?.is === 'given up') return this.giveUp(job, stopped.problem);
    }
    // areas without a road in them are no map
    if (this.hadPieces === 0) return { ok: false, error: this.lastProblem ?? elsewhere(this.tools.server) };
    return ok(this.outcome());
  }

  /** What an earlier time had, whole or in the parts it was asked in. */
  private async fromKept(job: Job): Promise<boolean> {
    const { kept } = this.tools;
    const key = this.keyOf(job);
    const text = await kept.read(key);
    const reading = text === undefined ? undefined : readAnswer(text);
    if (reading?.kind === 'answer') {
      this.take(job, key, reading.answer);
      return true;
    }
    const parts = partsOf(job);
    if (!parts || !this.isKeptBelow(parts)) return false;
    this.askNext(parts);
    return true;
  }

  private isKeptBelow(parts: readonly Job[]): boolean {
    return parts.some(
      (part) => this.tools.kept.has(this.keyOf(part)) || this.isKeptBelow(partsOf(part) ?? []),
    );
  }

  /** @returns why to go no further; undefined: on with the next */
  private async ask(
    job: Job,
  ): Promise<{ readonly is: 'refused' | 'given up'; readonly problem: Problem } | 'cancelled' | undefined> {
    const { server, asked } = this.tools;
    if (isEnough(server, await asked.of(server.host))) return { is: 'refused', problem: enough(server) };
    const outcome = await this.askOnce(job);
    if (outcome === undefined || outcome.is === 'cancelled') return 'cancelled';
    switch (outcome.is) {
      case 'refused':
        return outcome;
      case 'answer':
        return this.hold(job, outcome);
      case 'too much':
        return this.askForLess(job, outcome.problem);
      case 'busy':
        return this.waitForServer(job, outcome);
    }
  }

  private async askOnce(job: Job): Promise<Outcome | undefined> {
    const { server, folder, pace, signal, asked } = this.tools;
    const before = this.bytes;
    const outcome = await askAlone({ folder, pace, ...given({ signal }) }, async () => {
      const startMs = pace.now().getTime();
      const answer = await askInterpreter({
        server,
        text: questionOf(job, this.budget),
        budget: this.budget,
        now: pace.now(),
        mostMs: Math.max(MOST_VAIN_MS - this.vainMs(), 1_000),
        ...given({ signal }),
        onBytes: (bytes) => {
          this.bytes = before + bytes;
          this.tell();
        },
      });
      await asked.add(server.host, this.bytes - before);
      await pace.sleep(PAUSE_MS, signal);
      this.spentMs += Math.max(0, pace.now().getTime() - startMs);
      this.asks++;
      return answer;
    });
    return signal?.aborted ? undefined : outcome;
  }

  private async hold(
    job: Job,
    { answer, text }: Outcome & { readonly is: 'answer' },
  ): Promise<{ readonly is: 'refused'; readonly problem: Problem } | undefined> {
    const { kept, server } = this.tools;
    this.answeredNow();
    this.held++;
    this.tooMuchInARow = 0;
    if (job.is === 'piece' && !job.piece.isQuarter && !holdsRoad(answer.elements, job.piece)) {
      this.lose(job, 'no road');
      const isNothing = this.hadPieces === 0 && this.notHad.length >= MOST_BARE;
      return isNothing ? { is: 'refused', problem: elsewhere(server) } : undefined;
    }
    const key = this.keyOf(job);
    try {
      await kept.keep(key, text);
    } catch (error) {
      return { is: 'refused', problem: notKept(this.tools.folder, error) };
    }
    this.take(job, key, answer);
    return undefined;
  }

  /** The parts come next, so that what was asked in vain is soon told from what can be had. */
  private askForLess(
    job: Job,
    problem: Problem,
  ): { readonly is: 'given up'; readonly problem: Problem } | undefined {
    this.answeredNow();
    if (++this.tooMuchInARow > MOST_TOO_MUCH) return { is: 'given up', problem };
    const parts = partsOf(job);
    this.lastProblem = problem;
    if (parts) this.askNext(parts);
    else this.lose(job, 'too much');
    return undefined;
  }

  private async waitForServer(
    job: Job,
    { of, problem, came, leastMs }: Outcome & { readonly is: 'busy' },
  ): Promise<{ readonly is: 'given up'; readonly problem: Problem } | 'cancelled' | undefined> {
    const { server, pace, signal } = this.tools;
    this.failedInARow++;
    const statusS = of === 'place' ? await askStatus(server, signal) : undefined;
    const ms = waitMs({ of, inARow: this.failedInARow, ...given({ leastMs, statusS }) });
    if (ms === undefined || this.vainMs() + ms >= MOST_VAIN_MS)
      return { is: 'given up', problem: sayGivenUp(problem, this.failedInARow, this.vainMs()) };
    this.tell({ seconds: Math.ceil(ms / 1000), came });
    await pace.sleep(ms, signal);
    if (signal?.aborted) return 'cancelled';
    if (of === 'place') this.askNext([job]);
    else {
      // whoever asks for less of its time and memory has a place sooner
      this.budget = lessThan(this.budget);
      const failed = job.failed + 1;
      const parts = failed > 1 ? partsOf(job) : undefined;
      this.askNext((parts ?? [job]).map((part) => ({ ...part, failed })));
    }
    return undefined;
  }

  private answeredNow(): void {
    this.failedInARow = 0;
    this.lastAnsweredMs = this.tools.pace.now().getTime();
  }

  /** How long nothing has been answered. */
  private vainMs(): number {
    return this.tools.pace.now().getTime() - this.lastAnsweredMs;
  }

  private askNext(jobs: readonly Job[]): void {
    this.queue = [...jobs, ...this.queue];
  }

  private take(job: Job, key: string, { elements, unfit, baseDate }: LineAnswer): void {
    this.done++;
    this.had.push({ key, unfit, ...given({ baseDate }) });
    if (job.is === 'piece') {
      this.hadPieces++;
      return;
    }
    const countries = countriesIn(elements);
    if (countries.length === 0) this.areasLost = true;
    for (const country of countries) this.countries.add(country);
  }

  private lose(job: Job, why: NotHad['why']): void {
    this.done++;
    if (job.is === 'areas') this.areasLost = true;
    for (const span of spansOf(job)) this.notHad.push({ ...span, why });
  }

  private giveUp(job: Job, problem: Problem): Result<RunOutcome> {
    if (this.hadPieces === 0) return { ok: false, error: problem };
    for (const left of [job, ...this.queue]) this.lose(left, 'given up');
    return ok({ ...this.outcome(), gaveUp: problem });
  }

  private outcome(): RunOutcome {
    return {
      had: this.had,
      notHad: this.notHad,
      areasTold: !this.areasLost,
      countries: [...this.countries].sort(),
    };
  }

  private keyOf(job: Job): string {
    return keyOf(this.tools.server, questionOf(job));
  }

  /** One question is always under way: the one that is told of. */
  private tell(waiting?: RunProgress['waiting']): void {
    const left = this.queue.length + 1;
    const isKnown = this.held > 0 && this.failedInARow === 0;
    const each = this.spentMs / 1000 / Math.max(1, this.asks);
    this.tools.onProgress?.({
      done: this.done,
      of: this.done + left,
      bytes: this.bytes,
      tries: this.failedInARow + 1,
      ...given({ waiting, secondsLeft: isKnown ? Math.ceil(left * each) : undefined }),
    });
  }
}

const CANCELLED = fail('cancelled', 'Cancelled. What was fetched so far is kept.');

function lessThan({ timeoutS, maxBytes }: Budget): Budget {
  return {
    timeoutS: Math.max(LEAST.timeoutS, Math.floor(timeoutS / 2)),
    maxBytes: Math.max(LEAST.maxBytes, maxBytes / 2),
  };
}

function sayGivenUp({ code, message }: Problem, times: number, vainMs: number): Problem {
  const minutes = Math.max(1, Math.round(vainMs / 60_000));
  return fail(
    code,
    `${message} It was asked ${times === 1 ? 'once' : `${times} times within ${minutes} min`}, and is left alone now. What was fetched so far is kept: try again later, or use another server.`,
  ).error;
}

function enough({ host }: URL): Problem {
  return fail(
    'line.enough',
    `${host} has been asked today as much as one user may ask of it. What was fetched so far is kept: go on tomorrow, fetch by region, or name a server of your own in the settings.`,
  ).error;
}

function elsewhere({ host }: URL): Problem {
  return fail(
    'line.elsewhere',
    `${host} answers without any road where this drive runs: it may hold the map of another part of the world. Use another server.`,
  ).error;
}

function notKept(folder: string, error: unknown): Problem {
  return fail(
    'line.not-kept',
    `What was fetched cannot be kept in ${folder} (${messageOf(error)}). Make room there, then fetch again: what is there already is not asked for again.`,
  ).error;
}

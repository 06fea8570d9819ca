import type { ClientRequest } from 'node:http';
import { Faulted } from './fault.ts';

/** How long a server may take. */
export interface Patience {
  readonly connectMs: number;
  /** between two bytes, and before the first: a server that works on an answer may be silent meanwhile */
  readonly silenceMs: number;
  readonly totalMs: number;
}

/** Ends a request that takes too long or is no longer wanted. */
export class Watch {
  private readonly patience: Patience;
  private readonly signal: AbortSignal | undefined;
  private readonly whole: NodeJS.Timeout;
  private step: NodeJS.Timeout | undefined;
  private request: ClientRequest | undefined;
  private ended: Faulted | undefined;

  constructor(patience: Patience, signal?: AbortSignal) {
    this.patience = patience;
    this.signal = signal;
    this.whole = this.after('total', patience.totalMs);
    if (signal?.aborted) this.cancel();
    else signal?.addEventListener('abort', this.cancel, { once: true });
  }

  /** What the request was ended for; undefined while it was not. */
  get fault(): Faulted | undefined {
    return this.ended;
  }

  /** From here on it is this request that is ended. */
  holds(request: ClientRequest): void {
    this.request = request;
    if (this.ended) request.destroy(this.ended);
    else this.restart('connect', this.patience.connectMs);
  }

  /** Connected, or some more of the answer came. */
  heard(): void {
    if (!this.ended) this.restart('silence', this.patience.silenceMs);
  }

  /** The next bytes are waited for by us, not the other way round. */
  pause(): void {
    clearTimeout(this.step);
  }

  close(): void {
    clearTimeout(this.whole);
    clearTimeout(this.step);
    this.signal?.removeEventListener('abort', this.cancel);
  }

  private readonly cancel = () => this.end(new Faulted({ kind: 'cancelled' }));

  private restart(of: 'connect' | 'silence', ms: number): void {
    clearTimeout(this.step);
    this.step = this.after(of, ms);
  }

  private after(of: 'connect' | 'silence' | 'total', ms: number): NodeJS.Timeout {
    return setTimeout(() => this.end(new Faulted({ kind: 'slow', of, ms })), ms);
  }

  private end(fault: Faulted): void {
    this.ended ??= fault;
    this.request?.destroy(this.ended);
  }
}

import type { Problem } from '../../../../geo/result.ts';
import type { StageName } from './stages/index.ts';

/** What a worker is told. */
export type ToWorker =
  | { readonly kind: 'begin'; readonly stage: StageName; readonly setup: unknown; readonly worker: number }
  | { readonly kind: 'task'; readonly index: number; readonly task: unknown }
  | { readonly kind: 'end' };

/** What it tells. */
export type FromWorker =
  | { readonly kind: 'done'; readonly index: number; readonly done: unknown }
  | { readonly kind: 'ended'; readonly end: unknown }
  | { readonly kind: 'stopped'; readonly problem: Problem }
  | { readonly kind: 'notSorted' };

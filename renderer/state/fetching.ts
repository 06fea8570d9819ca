import { signal } from '@preact/signals';
import type { FetchPlan } from '../../main/contract/fetch.ts';
import type { Source } from '../../main/contract/source.ts';

export type FetchBy = FetchPlan['by'];

/** The drive whose map is to be fetched. */
export interface FetchFor {
  readonly source: Source;
  /** 1-based place among the file's tracks */
  readonly track: number;
}

/** What a way of fetching would take: still being worked out, known, or why it cannot be told. */
export type Planned = FetchPlan | { readonly problem: string } | undefined;

/** What fetching the map of the open drive would take, either way. */
export const planned = signal<Readonly<Record<FetchBy, Planned>>>({ line: undefined, region: undefined });

/** The drive whose map is being fetched now. */
export const underWay = signal<FetchFor | undefined>(undefined);

/** How often something was asked of a server: what was asked of it today has changed since. */
export const asked = signal(0);

/** What the user is asked to agree to. */
export interface Fetching {
  readonly for: FetchFor;
  readonly plan: FetchPlan;
  /** a step that was agreed to is under way, its successor will be shown here */
  readonly busy: boolean;
  readonly problem?: string;
}
export const fetching = signal<Fetching | undefined>(undefined);

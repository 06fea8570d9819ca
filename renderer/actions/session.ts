import type { Source } from '../../main/contract/source.ts';

/** What a reload brings back: what was open and chosen. It lives as long as the page's tab. */
export interface Session {
  readonly map?: { readonly source: Source; readonly about?: Source };
  readonly drive?: { readonly source: Source; readonly track?: number };
  readonly vehicleId?: string;
  readonly leaveAt?: string;
  readonly selectedId?: string;
  readonly view?: string;
  /** files of changed drives that the user has nowhere else */
  readonly madeHere?: readonly Source[];
}

const KEY = 'lanegauge.session';
type Storage = Pick<globalThis.Storage, 'getItem' | 'setItem'>;

/** @returns an empty session where nothing usable is kept; what is wrong in it the host refuses by itself */
export function readSession(storage: Storage): Session {
  try {
    const kept: unknown = JSON.parse(storage.getItem(KEY) ?? '{}');
    return typeof kept === 'object' && kept !== null ? (kept as Session) : {};
  } catch {
    return {};
  }
}

export function keepSession(storage: Storage, session: Session): void {
  try {
    storage.setItem(KEY, JSON.stringify(session));
  } catch {
    // a full or forbidden store costs the reload its memory, nothing else
  }
}

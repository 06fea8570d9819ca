import type { Region } from '../../../../geo/fetch/region/region.ts';
import type { Patience } from '../http/watch.ts';

/** Bytes of a map file that are here; `of` where the server told how many there will be. */
export interface MapProgress {
  readonly bytes: number;
  readonly of?: number;
}

/** One map file to be fetched. */
export interface MapAsk {
  /** the server's address that the user agreed to */
  readonly server: URL;
  readonly region: Region;
  /** where the file lies while it comes */
  readonly folder: string;
  readonly patience: Patience;
  readonly signal?: AbortSignal;
  onProgress?(progress: MapProgress): void;
  /** bytes that a folder's disk has room for */
  freeBytes(folder: string): Promise<number>;
  nowMs(): number;
  /** rejects when the signal is given */
  wait(ms: number, signal?: AbortSignal): Promise<void>;
}

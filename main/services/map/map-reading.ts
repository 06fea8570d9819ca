import type { FileHandle } from 'node:fs/promises';
import type { Result } from '../../../geo/result.ts';
import type { FileFacts, MapSink } from '../../../geo/roads/sink.ts';

/** One reading of one file from its start to its end. */
export interface Reading {
  readonly handle: FileHandle;
  readonly size: number;
  /** for sentences */
  readonly name: string;
  readonly sink: MapSink;
  /** compute the file's SHA-256 on the way */
  readonly withHash: boolean;
  /** told of the bytes done so far; lets other work in, and ends the reading by throwing Cancelled */
  pause(bytesDone: number): Promise<void>;
}

export interface ReadFacts extends FileFacts {
  /** '' when not asked for */
  readonly sha256: string;
}

export type ReadMapFile = (reading: Reading) => Promise<Result<ReadFacts>>;

/** The user's wish to stop, on its way out. */
export class Cancelled extends Error {}

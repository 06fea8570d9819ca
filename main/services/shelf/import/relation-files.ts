import { closeSync, openSync } from 'node:fs';
import { decodeRelation, type RelationRecord } from '../../../../geo/shelf/import/relation-record.ts';
import { readWhole } from './spill.ts';
import { MOST_WORKERS } from './workers.ts';

/** Relations read last are kept: neighbouring tiles ask for the same ones. */
const KEPT_MEMBERS = 50_000;

/** Reads single relations that were kept. */
export class RelationFiles {
  private readonly fds: readonly number[];
  private readonly kept = new Map<number, RelationRecord>();
  private members = 0;

  /** @param paths by worker */
  constructor(paths: readonly string[]) {
    this.fds = paths.map((path) => openSync(path, 'r'));
  }

  at(place: number): RelationRecord {
    const known = this.kept.get(place);
    if (known) return known;
    const fd = this.fds[place % MOST_WORKERS]!;
    const offset = Math.floor(place / MOST_WORKERS);
    const head = Buffer.alloc(4);
    readWhole(fd, head, 0, 4, offset);
    const bytes = new Uint8Array(head.readUInt32LE(0));
    readWhole(fd, bytes, 0, bytes.length, offset + 4);
    const record = decodeRelation(bytes);
    this.members += record.members.length + 10;
    if (this.members > KEPT_MEMBERS) {
      this.kept.clear();
      this.members = record.members.length;
    }
    this.kept.set(place, record);
    return record;
  }

  close(): void {
    for (const fd of this.fds) closeSync(fd);
  }
}

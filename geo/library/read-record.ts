import { type LibraryRecord, RECORD_FORMAT, takeRecord } from './record.ts';
import { nameOfHash, readRecordFile, type Sha256 } from './record-name.ts';

/**
 * What a file among the records is.
 *
 * - `record`: a version of an item
 * - `newer`: whole, and more than this program understands; a later one wrote it
 * - `half`: not what was written: still on its way, cut off or changed since
 * - `foreign`: none of ours
 */
export type RecordRead =
  | { readonly is: 'record'; readonly name: string; readonly record: LibraryRecord }
  | { readonly is: 'newer' | 'half'; readonly name?: string }
  | { readonly is: 'foreign' };

/**
 * Reads one file among the records. A name of our own must agree with the bytes; under any other, as a service that
 * brings folders together may give to a copy, the bytes alone tell which record it is.
 * @param file its name
 * @param text its content, as UTF-8
 */
export function readRecord(file: string, text: string, sha256: Sha256): RecordRead {
  const claimed = readRecordFile(file);
  const name = nameOfHash(sha256(text));
  if (claimed && claimed.name !== name) return { is: 'half', name: claimed.name };
  const json = parse(text);
  if (!claimed && !isOurs(json)) return { is: 'foreign' };
  const record = takeRecord(json);
  if (!record) return { is: 'newer', name };
  const asNamed = !claimed || claimed.parents.join() === record.parents.join();
  return asNamed ? { is: 'record', name, record } : { is: 'half', name };
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function isOurs(json: unknown): boolean {
  return typeof json === 'object' && json !== null && 'format' in json && json.format === RECORD_FORMAT;
}

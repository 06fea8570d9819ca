/** So many characters of its hash name a record: two of one name would take more records than a firm ever makes. */
const NAME_LENGTH = 20;

/** How a record is called: the beginning of the SHA-256 of its bytes, lowercase hexadecimal. */
export const RECORD_NAME = /^[0-9a-f]{20}$/;

/** More parents would make a file's name longer than some disks take; what joins more does so in steps. */
export const PARENTS_MOST = 4;

const FIRST = 'first';
const FILE = /^(first|[0-9a-f]{20}(?:\+[0-9a-f]{20}){0,3})-([0-9a-f]{20})\.json$/;
const ITEM_ID = /^(?:drive|vehicle|load|note|handed|seen|back)-[a-z0-9][a-z0-9-]{0,79}$/;

/** The name of a record of this hash. @param sha256 of its bytes, lowercase hexadecimal */
export function nameOfHash(sha256: string): string {
  return sha256.slice(0, NAME_LENGTH);
}

/** What a record's file is called: its parents, then its own name. The same on every disk, whatever it makes of case. */
export function recordFile(parents: readonly string[], name: string): string {
  return `${parents.length === 0 ? FIRST : parents.join('+')}-${name}.json`;
}

/** A record's file by its name. */
export interface NamedRecord {
  readonly name: string;
  readonly parents: readonly string[];
}

/** Reads a file's name. @returns undefined for one that no program of ours gave */
export function readRecordFile(file: string): NamedRecord | undefined {
  const [, parents, name] = FILE.exec(file.toLowerCase()) ?? [];
  if (parents === undefined || name === undefined) return undefined;
  return { name, parents: parents === FIRST ? [] : parents.split('+') };
}

/** Whether this may name an item, and with it a folder on every disk. */
export function isItemId(id: string): boolean {
  return ITEM_ID.test(id);
}

/** A function that gives the SHA-256 of a text's UTF-8 bytes as lowercase hexadecimal. */
export type Sha256 = (text: string) => string;

/** The id of one track of a GPX file: the same on every computer, so that one file is one drive. */
export function driveId(gpxSha256: string, track: number): string {
  return `drive-${gpxSha256.slice(0, 16)}-${track}`;
}

/** The id of a vehicle's card or load, on disks that do not tell large letters from small ones too. */
export function itemOfVehicle(kind: 'vehicle' | 'load', vehicleId: string, sha256: Sha256): string {
  if (/^[a-z0-9][a-z0-9-]*$/.test(vehicleId)) return `${kind}-${vehicleId}`;
  const plain = vehicleId.toLowerCase().replaceAll('_', '-').replace(/^-+/, '');
  return `${kind}-${plain === '' ? 'v' : plain}-${sha256(vehicleId).slice(0, 8)}`;
}

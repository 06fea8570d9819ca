import { z } from 'zod';
import { backBodySchema } from './body/back.ts';
import { driveBodySchema } from './body/drive.ts';
import { handedBodySchema, seenBodySchema } from './body/handed.ts';
import { noteBodySchema } from './body/note.ts';
import { loadBodySchema, vehicleBodySchema } from './body/vehicle.ts';
import { isItemId, PARENTS_MOST, RECORD_NAME } from './record-name.ts';

/** What each kind of item holds. */
const BODIES = {
  /** a drive and what was chosen for it */
  drive: driveBodySchema,
  /** a vehicle's card */
  vehicle: vehicleBodySchema,
  /** what is aboard a vehicle */
  load: loadBodySchema,
  /** what the firm knows of a place */
  note: noteBodySchema,
  /** a check handed out */
  handed: handedBodySchema,
  /** changes acknowledged by a person */
  seen: seenBodySchema,
  /** that the vehicle of a sheet is back */
  back: backBodySchema,
} as const;

/** What an item of the library is; its id begins with it. */
export type Kind = keyof typeof BODIES;
export const ITEM_KINDS = Object.keys(BODIES) as readonly Kind[];

/** What an item of a kind holds. */
export type Body<K extends Kind> = z.infer<(typeof BODIES)[K]>;

export const RECORD_FORMAT = 'lanegauge.record';
export const RECORD_VERSION = 1;

/**
 * One version of one item, format `lanegauge.record` version 1. It never changes; what is newer names it as a parent.
 * Its own name is the hash of its bytes. Without a body the item is deleted.
 */
export interface LibraryRecord<K extends Kind = Kind> {
  readonly kind: K;
  readonly id: string;
  /** names of the versions it takes the place of; none: the first */
  readonly parents: readonly string[];
  /** ISO 8601, by the clock of the computer it was made on: to be shown, never to order by; '' where nobody tells */
  readonly made: string;
  readonly body?: Body<K>;
}

const envelope = {
  format: z.literal(RECORD_FORMAT),
  version: z.literal(RECORD_VERSION),
  id: z.string().refine(isItemId),
  parents: z.array(z.string().regex(RECORD_NAME)).max(PARENTS_MOST),
  made: z.string().max(40),
};
/** made once: to make a schema costs more than to use it many times */
const kept = z.object({ ...envelope, body: z.unknown() });
const deleted = z.object({ ...envelope, kind: z.enum(ITEM_KINDS), removed: z.literal(true) });

/** Takes a record from JSON. @returns undefined where it is none that this program knows */
export function takeRecord(json: unknown): LibraryRecord | undefined {
  if (typeof json !== 'object' || json === null || !('kind' in json)) return undefined;
  if ('removed' in json) {
    const read = deleted.safeParse(json);
    return read.success ? keep(read.data) : undefined;
  }
  const kind = ITEM_KINDS.find((each) => each === json.kind);
  return kind === undefined ? undefined : takeKept(kind, json);
}

function takeKept<K extends Kind>(kind: K, json: unknown): LibraryRecord<K> | undefined {
  const read = kept.safeParse(json);
  if (!read.success) return undefined;
  const body = BODIES[kind].safeParse(read.data.body);
  if (!body.success) return undefined;
  return { ...keep({ ...read.data, kind }), body: body.data as Body<K> };
}

function keep<K extends Kind>({ kind, id, parents, made }: Omit<LibraryRecord<K>, 'body'>): LibraryRecord<K> {
  return { kind, id, parents, made };
}

/** What is wrong with a body of a kind; undefined for nothing. */
export function bodyFault(kind: Kind, body: unknown): z.core.$ZodIssue | undefined {
  const read = BODIES[kind].safeParse(body);
  return read.success ? undefined : read.error.issues[0];
}

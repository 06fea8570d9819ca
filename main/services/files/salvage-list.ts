import type { z } from 'zod';
import { sayFault } from '../../../geo/document/say-fault.ts';
import { clip, counted, quote } from '../../../geo/units/text.ts';
import type { Salvage } from './read-kept.ts';

export interface ListOfItems<T, I> {
  /** the whole file */
  readonly schema: z.ZodType<T>;
  /** the member that holds the list */
  readonly key: string;
  readonly item: z.ZodType<I>;
  readonly most: number;
  idOf(item: I): string;
  /** what the user knows an item by, of whatever stands in its place */
  nameOf(item: unknown): unknown;
}

const NAMED_MOST = 5;

/** Saves the sound items of a list of which some are damaged: one bad card costs that card alone. */
export function salvageList<T, I>(list: ListOfItems<T, I>): Salvage<T> {
  const { schema, key } = list;
  return (json) => {
    if (typeof json !== 'object' || json === null) return undefined;
    const found = (json as Readonly<Record<string, unknown>>)[key];
    if (!Array.isArray(found)) return undefined;
    const { sound, lost } = sort(found, list);
    if (sound.length === 0 || lost.length === 0) return undefined;
    const parsed = schema.safeParse({ ...json, [key]: sound });
    return parsed.success ? { value: parsed.data, lost: inShort(lost) } : undefined;
  };
}

function sort<T, I>(found: readonly unknown[], { item, most, idOf, nameOf }: ListOfItems<T, I>) {
  const sound: unknown[] = [];
  const lost: string[] = [];
  const ids = new Set<string>();
  for (const [i, each] of found.entries()) {
    const parsed = item.safeParse(each);
    const why = !parsed.success
      ? whyNot(parsed.error, each)
      : ids.has(idOf(parsed.data))
        ? 'another carries the same id'
        : sound.length === most
          ? `there are more than ${most}`
          : undefined;
    if (why === undefined && parsed.success) {
      ids.add(idOf(parsed.data));
      sound.push(each);
    } else lost.push(`${saidName(nameOf(each), i)} (${why})`);
  }
  return { sound, lost };
}

function whyNot(error: z.ZodError, item: unknown): string {
  const [issue] = error.issues;
  if (issue === undefined) return 'it cannot be used';
  return clip(sayFault(issue, item, { whole: 'the whole', kind: 'item' }), 200);
}

function saidName(name: unknown, place: number): string {
  return typeof name === 'string' && name.trim() !== '' ? quote(name) : `item ${place + 1}`;
}

function inShort(lost: readonly string[]): string[] {
  if (lost.length <= NAMED_MOST) return [...lost];
  return [...lost.slice(0, NAMED_MOST), counted(lost.length - NAMED_MOST, 'more', 'more')];
}

/** A member of whatever stands there. */
export function memberOf(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as Readonly<Record<string, unknown>>)[key]
    : undefined;
}

import type { z } from 'zod';
import { sayFault } from '../geo/document/say-fault.ts';
import { quote } from '../geo/units/text.ts';

type Issue = z.core.$ZodIssue;

/** One fault of a request in words. What is wrong with a vehicle card is said as of a file, with the card's name. */
export function sayRequestFault(issue: Issue, request: unknown): string {
  const depth = issue.path.indexOf('card') + 1;
  if (depth === 0) {
    const where = issue.path.map(String).join('.').slice(0, 100);
    return `${where === '' ? '' : `${where}: `}${issue.message.slice(0, 300)}`;
  }
  const card = issue.path.slice(0, depth).reduce(partOf, request);
  const name = partOf(card, 'name');
  const called = typeof name === 'string' && name.trim() !== '' ? ` ${quote(name)}` : '';
  return `the card${called}: ${sayFault({ ...issue, path: issue.path.slice(depth) }, card).slice(0, 500)}`;
}

function partOf(value: unknown, key: PropertyKey): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
  return (value as Record<PropertyKey, unknown>)[key];
}

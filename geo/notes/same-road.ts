import { given } from '../given.ts';
import type { Tags } from '../roads/roads.ts';
import type { NoteFields } from './note.ts';

type RoadSeen = NonNullable<NoteFields['road']>;

/** A road as a note keeps it: name, number and class as mapped. */
export function seenOn(tags: Tags): RoadSeen {
  return given({ name: tags['name'], ref: tags['ref'], class: tags['highway'] });
}

/** Whether it has a name or a number to be known by. */
export function isNamed({ name, ref }: RoadSeen): boolean {
  return name !== undefined || ref !== undefined;
}

/** Whether two roads have a name in common, or a number: one of several (`A 7;E 45`) is enough. */
export function isSameRoad(a: RoadSeen, b: RoadSeen): boolean {
  return shares(a.name, b.name) || shares(a.ref, b.ref);
}

function shares(a: string | undefined, b: string | undefined): boolean {
  const ours = new Set(partsOf(a));
  return partsOf(b).some((part) => ours.has(part));
}

function partsOf(text: string | undefined): string[] {
  return (text ?? '')
    .split(';')
    .map((part) => part.trim().toLowerCase())
    .filter((part) => part !== '');
}

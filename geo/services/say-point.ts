import { smallest } from '../lists.ts';
import type { Tags } from '../roads/roads.ts';
import { readAccessValue } from '../tags/access-value.ts';
import { printLimitM, printSizeM } from '../units/print.ts';
import { readLength } from '../units/read-length.ts';
import { clip, quote } from '../units/text.ts';
import type { ServiceKind } from './kinds.ts';
import { pointKind } from './point.ts';

/** Whether the vehicle may go there, by the place's own tags. */
export interface Admission {
  readonly may: boolean;
  /** what to know before going, in sentences */
  readonly say: readonly string[];
}

const ACCESS_SAY = {
  no: 'No access.',
  private: 'Private.',
  permit: 'Only with a permit: ask first.',
  destination: 'For customers: ask first.',
  discouraged: 'Not wanted there by its sign.',
  unknown: 'Who may use it is not understood as mapped',
} as const;

/** Who may use it, what it costs, what its hours leave open. */
export function admissionOf(tags: Tags): Admission {
  const say: string[] = [];
  const text = tags['sanitary_dump_station'] === 'customers' ? 'customers' : tags['access'];
  const meaning = text === undefined ? undefined : readAccessValue(text);
  if (meaning === 'unknown') say.push(`${ACCESS_SAY.unknown}: ${quote(text ?? '', 40)}.`);
  else if (meaning !== undefined && meaning !== 'open') say.push(ACCESS_SAY[meaning]);
  if (tags['motorhome'] === 'no') say.push('Not for motorhomes, as mapped.');
  const { fee, charge } = tags;
  if (charge !== undefined) say.push(`Fee: ${clip(charge, 40)}.`);
  else if (fee === 'no') say.push('Free of charge.');
  else if (fee !== undefined) say.push('There is a fee.');
  else if (pointKind(tags) !== 'filling station') say.push('Whether there is a fee is not mapped.');
  const shut = meaning === 'no' || meaning === 'private' || tags['motorhome'] === 'no';
  return { may: !shut, say };
}

/** What of a service is not mapped. */
export function sayUnknownOffer(kind: ServiceKind, tags: Tags): string {
  if (kind === 'fresh water' && pointKind(tags) === 'drinking water')
    return 'A tap: whether a hose fits is not mapped.';
  return `${NOT_MAPPED[kind]} is not mapped: ask first.`;
}

const NOT_MAPPED: Readonly<Record<ServiceKind, string>> = {
  cassette: 'Whether a cassette can be emptied',
  'grey water': 'Whether waste water can be emptied',
  'fresh water': 'Whether the tank can be filled',
  LPG: 'Whether there is LPG',
  AdBlue: 'Whether there is AdBlue',
  fuel: 'Whether there is diesel',
};

/** The roof over the pumps against the vehicle. */
export interface Canopy {
  readonly fits: boolean | undefined;
  readonly say: string;
}

/** @param needsM the vehicle's height with its allowance @param marginM spare asked for @param roof tags of a roof mapped over the pumps */
export function canopyOf(
  tags: Tags,
  {
    needsM,
    marginM,
    roof,
  }: { readonly needsM: number; readonly marginM: number; readonly roof?: Tags | undefined },
): Canopy | undefined {
  if (pointKind(tags) !== 'filling station') return undefined;
  const texts = [tags['maxheight'], roof?.['maxheight']].filter((text) => text !== undefined);
  if (texts.length === 0)
    return { fits: undefined, say: 'The height of the roof over the pumps is not mapped: read the sign.' };
  const reads = texts.map((text) => ({ text, read: readLength(text, 'height') }));
  // where both are mapped the lower holds
  const lowM = smallest(
    reads.map(({ read }) => (read.kind === 'value' ? read.value : Number.POSITIVE_INFINITY)),
  );
  const spareM = lowM - needsM;
  const figures = `roof over the pumps ${printLimitM(lowM)}, you ${printSizeM(needsM)}`;
  if (spareM < 0) return { fits: false, say: `Too low: ${figures}.` };
  const unread = reads.find(({ read }) => read.kind !== 'value');
  if (unread !== undefined)
    return {
      fits: undefined,
      say: `The height of the roof over the pumps reads ${quote(unread.text, 30)}: read the sign.`,
    };
  return { fits: true, say: spareM < marginM ? `Tight: ${figures}.` : `Fits: ${figures}.` };
}

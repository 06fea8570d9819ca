import type { Tags } from '../../roads/roads.ts';
import { readLength } from '../../units/read-length.ts';

/** Lower than this a building stands on the ground, whatever a road drawn through it would like. Metres. */
const ON_THE_GROUND_M = 1.5;

/** "0", "0.0 m" */
const NOTHING = /^0+([.,]0*)?\s*m?$/;

/** How high above the ground the underside of a building, a part of one or a roof is mapped. */
export type Underside =
  | { readonly kind: 'metres'; readonly text: string; readonly heightM: number }
  | {
      readonly kind: 'unreadable';
      readonly text: string;
      /** why it is not believed; undefined: it cannot be read */
      readonly why?: string;
    };

/** @returns undefined where nothing is mapped, or it stands on the ground */
export function undersideOf(tags: Tags): Underside | undefined {
  if (tags['building'] === undefined && tags['building:part'] === undefined) return undefined;
  const text = tags['min_height'];
  if (text === undefined || NOTHING.test(text)) return undefined;
  const reading = readLength(text, 'underside');
  if (reading.kind === 'not believed') return { kind: 'unreadable', text, why: reading.reason };
  if (reading.kind !== 'value') return { kind: 'unreadable', text };
  return reading.value < ON_THE_GROUND_M ? undefined : { kind: 'metres', text, heightM: reading.value };
}

/** Whether a part of a building hangs over the ground; one that does not has no business over a road. */
export function hangsOver(tags: Tags): boolean {
  const level = Number(tags['building:min_level'] ?? tags['min_level']);
  return undersideOf(tags) !== undefined || level > 0;
}

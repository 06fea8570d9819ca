import type { Drive } from '../drive/drive.ts';
import type { LoadFigures } from '../load/weigh/figures.ts';
import type { LocalNote } from '../notes/note.ts';
import type { Roads } from '../roads/roads.ts';
import type { Units } from '../units/in-units.ts';
import type { VehicleCard } from '../vehicle/card.ts';
import type { Envelope } from '../vehicle/envelope.ts';
import type { Along } from './along.ts';
import type { Draft } from './finding.ts';

/** Spare asked for before a passage counts as free. Metres. */
export interface Margins {
  readonly heightM: number;
  /** in all, not per side */
  readonly physicalWidthM: number;
}

export const DEFAULT_MARGINS: Margins = { heightM: 0.15, physicalWidthM: 0.15 };

/** All that a rule may look at. */
export interface RuleInput {
  readonly drive: Drive;
  readonly roads: Roads;
  readonly card: VehicleCard;
  readonly envelope: Envelope;
  /** the vehicle as loaded, where a load is given: what exceeds a plate is held in the plate's stead */
  readonly load?: LoadFigures | undefined;
  readonly margins: Margins;
  /** what its sentences are in */
  readonly units: Units;
  /** ISO 3166-1 alpha-2, in driving order; empty when neither the place nor the user tells */
  readonly country: readonly string[];
  /** where the vehicle stops on the way, metres along the drive: there it goes to the place, and passes through no more */
  readonly stopsM?: readonly number[] | undefined;
  /** country, its row of rules and the clock at each place of the drive */
  readonly along: Along;
  /** what the firm knows of places, as far as it holds on the day */
  readonly localNotes?: readonly LocalNote[];
}

/**
 * Everything one rule has to say about this drive with this vehicle, in any order.
 * Pure; adding one is a file with one of these and a line in rules/index.ts.
 */
export type SubjectRule = (input: RuleInput) => Draft[];

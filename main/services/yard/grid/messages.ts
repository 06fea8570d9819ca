import type { DayPlan } from '../../../../geo/day/plan.ts';
import type { Difference } from '../../../../geo/library/differences/difference.ts';
import type { LocalNote } from '../../../../geo/notes/note.ts';
import type { Box } from '../../../../geo/roads/box.ts';
import type { Units } from '../../../../geo/units/in-units.ts';
import type { VehicleCard } from '../../../../geo/vehicle/card.ts';
import type { Cell } from '../../../../geo/yard/cell.ts';
import type { Settings } from '../../../contract/settings.ts';

/** What all drives of a grid are judged by. */
export interface JudgeSetup {
  /** the shelf's folder */
  readonly shelf: string;
  readonly margins?: Settings['margins'];
  /** ISO 3166-1 alpha-2, for places that do not tell */
  readonly country?: string;
  readonly notes: readonly LocalNote[];
  /** when, as a moment in ISO 8601 */
  readonly made: string;
  readonly units: Units;
}

/** Paths of the reports of one drive with one vehicle. */
export interface KeptAt {
  /** as last seen by a person: what a newer one is compared with */
  readonly seen: string;
  /** the newest, where it says otherwise */
  readonly newest: string;
}

/** One drive, and the vehicles it is to be held against. */
export interface DriveTask {
  readonly drive: string;
  /** where its GPX lies, and how sentences call it; with other bytes than those of the hash it is refused */
  readonly file: { readonly path: string; readonly name: string; readonly sha256?: string };
  /** 1-based place among the file's tracks */
  readonly track?: number;
  /** local wall time, YYYY-MM-DDTHH:MM */
  readonly leaveAt?: string;
  readonly day?: DayPlan;
  readonly vehicles: readonly {
    readonly id: string;
    readonly card: VehicleCard;
    /** where its reports are kept */
    readonly keptAt?: KeptAt;
  }[];
}

/** A cell that was judged. */
export interface JudgedCell {
  readonly drive: string;
  readonly vehicle: string;
  readonly cell: Cell;
  /** of the shelf about the drive, as `mapKey` tells it; DAMAGED where something of it could not be read */
  readonly map: string;
  /** against the report that was seen; absent where there was none */
  readonly differences?: readonly Difference[];
  /** why its report could not be kept for the next comparison, as the system says */
  readonly unkept?: string;
}

export type ToJudge =
  | { readonly kind: 'begin'; readonly setup: JudgeSetup }
  | { readonly kind: 'drive'; readonly task: DriveTask };

export type FromJudge =
  | { readonly kind: 'cell'; readonly cell: JudgedCell }
  /** no cell of this drive came, and why, a sentence */
  | { readonly kind: 'failed'; readonly drive: string; readonly say: string }
  /** all of a drive's cells came; `box` is where it lies */
  | { readonly kind: 'done'; readonly drive: string; readonly box: Box };

import type { Finding } from '../../report/finding.ts';
import type { Verdict } from '../../report/level.ts';
import type { Turn } from '../../report/turn.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import type { TurnOff } from '../../wayround/turn-off.ts';

/**
 * What the driver takes along, before it is paper, page or file: plain data and finished sentences. Every form of it is
 * made from this, so that all say the same under the same numbers.
 */
export interface HandOverDocument {
  readonly drive: DriveHead;
  readonly verdict: {
    readonly level: Verdict;
    /** `Do not drive` for a barred drive, else the verdict's word */
    readonly head: string;
    readonly say: string;
    /** of a barred drive: the way round, or how to come by one */
    readonly wayOut: string | undefined;
  };
  /** over a plate as loaded; undefined where it is not, or no load was given */
  readonly overload: string | undefined;
  readonly card: VehicleCard;
  /** what a driver has to know by heart, the most telling first */
  readonly figures: readonly BigFigure[];
  /** in driving order, numbered from 1 */
  readonly places: readonly PlaceToKnow[];
  /** folded places of one sort, each with its road and kilometre, in a line */
  readonly unnumbered: readonly string[];
  /** the five that leave the least room, in driving order */
  readonly turns: readonly TurnToKnow[];
  readonly day: DayToKeep | undefined;
  readonly before: readonly string[];
  readonly notChecked: readonly string[];
  readonly contradicts: string;
  readonly cautions: readonly string[];
  /** left open, to be filled in by hand */
  readonly openLines: readonly string[];
  readonly sheet: SheetHead;
}

interface DriveHead {
  readonly name: string;
  /** `From Quay Street (54.10000, 9.20000) to Mill Lane (54.20000, 9.30000)` */
  readonly ends: string;
  /** `12.3 km (7.6 mi)` */
  readonly length: string;
  /** `Leave 2027-06-12 09:30, arrive 11:02, 1 h 32 min of driving` */
  readonly times: string;
  readonly lengthM: number;
}

/** Who hands it out, when, and of which map. */
export interface SheetHead {
  /** `K7QM-4XPD`; '' where none is kept */
  readonly number: string;
  /** the number that this one replaces */
  readonly replaces?: string;
  /** the day it was made, in words */
  readonly made: string;
  readonly map: string;
  readonly program: string;
  /** the firm's own, '' where none is set */
  readonly heading: string;
  readonly telephone: string;
}

export interface BigFigure {
  readonly what: string;
  readonly metric: string;
  readonly imperial: string;
}

/** A finding with its number and all that is said of it. */
export interface PlaceToKnow {
  readonly number: number;
  /** `02` */
  readonly label: string;
  readonly finding: Finding;
  /** `Barred: height` */
  readonly title: string;
  /** `2.2 km` and `1.4 mi` */
  readonly km: string;
  readonly miles: string;
  readonly clock: string | undefined;
  readonly road: string | undefined;
  /** `limit 2.90 m (9'6") − height … = 0.20 m over` */
  readonly sum: string | undefined;
  readonly say: string;
  readonly advice: string;
  /** what a way past it costs, or why there is none; only where ways were asked for */
  readonly wayRound: string | undefined;
  /** only of what is barred or tight */
  readonly turnOff: { readonly say: string; readonly place: TurnOff | undefined } | undefined;
}

/** A turn that leaves little room. */
export interface TurnToKnow {
  /** of the place it stands at, where it is one of the numbered */
  readonly number: number;
  readonly label: string;
  readonly turn: Turn;
  readonly title: string;
  readonly say: string;
  /** the gap to keep beside the tail */
  readonly keep: string;
}

/** What the day holds besides the driving, in finished words. */
export interface DayToKeep {
  readonly stops: readonly {
    readonly name: string;
    /** `12.3 km (7.6 mi)` */
    readonly at: string;
    readonly times: string;
    readonly note: string;
  }[];
  readonly due: readonly {
    /** on the clock of the place; '' where it hangs on no hour */
    readonly at: string;
    readonly say: string;
  }[];
  readonly notes: readonly string[];
}

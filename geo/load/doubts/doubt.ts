import type { MomentKind } from '../tanks/on-the-way.ts';
import type { LoadFigures, LoadLimit } from '../weigh/figures.ts';
import type { Estimated } from '../weigh/load-card.ts';

/** What is over on the way, and at which state of the tanks. Kilograms. */
export interface OverOnTheWay {
  readonly kind: 'over on the way';
  readonly moment: MomentKind;
  readonly over: readonly { readonly limit: LoadLimit; readonly overKg: number }[];
}

/** An item whose place by name and whose metres do not go together; `placeM` is the card's, where it gives one. */
export interface Misplaced {
  readonly item: string;
  readonly place: string;
  readonly xM: number;
  readonly placeM?: number;
}

/** Something wrong or doubtful in a load. Masses in kilograms, places in metres; `item` and the like are names as listed. */
export type Doubt =
  | {
      readonly kind: 'over plate';
      readonly limit: 'gross' | 'front' | 'rear';
      readonly loadKg: number;
      readonly plateKg: number;
      readonly overKg: number;
    }
  | {
      readonly kind: 'over rack';
      readonly onKg: number;
      readonly overKg: number;
      readonly limitFrom: NonNullable<LoadFigures['rack']>['limitFrom'];
    }
  | { readonly kind: 'wheels lift'; readonly axle: 'front' | 'rear' }
  | { readonly kind: 'driver twice' | 'water twice' | 'fuel twice'; readonly item: string }
  | { readonly kind: 'no driver' }
  | {
      readonly kind: 'litres and mass';
      readonly item: string;
      readonly litres: number;
      readonly massKg: number;
    }
  /** `share` is a fraction of the gross mass */
  | { readonly kind: 'little in front' | 'much in front'; readonly share: number }
  | {
      readonly kind: 'behind the body' | 'behind the rack' | 'ahead of the vehicle';
      readonly item: string;
      readonly byM: number;
    }
  | { readonly kind: 'no such place' | 'place elsewhere'; readonly items: readonly Misplaced[] }
  | { readonly kind: 'seat full'; readonly seat: string; readonly people: number }
  | {
      readonly kind: 'locker over';
      readonly locker: string;
      readonly insideKg: number;
      readonly limitKg: number;
    }
  | {
      readonly kind: 'tank over';
      readonly tank: string;
      readonly litres: number;
      /** of them in the empty weight of the card */
      readonly emptyWeightL: number;
      readonly capacityL: number;
    }
  | OverOnTheWay;

/** What was counted and how, what was not, and what somebody may do on the way. */
export type Counted =
  | {
      readonly kind: 'empty weight';
      readonly includesDriver: boolean;
      readonly includesFreshWater: boolean;
    }
  | { readonly kind: 'no water' | 'taken off' }
  /** the empty weight, kilograms, and what of it was not weighed */
  | { readonly kind: 'estimated'; readonly of: Estimated; readonly totalKg: number }
  | OverOnTheWay
  | { readonly kind: 'few things'; readonly listedKg: number; readonly leastKg: number };

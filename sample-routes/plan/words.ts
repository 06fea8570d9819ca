export type Tags = Record<string, string>;

/** How a line bends between the points it is given. */
export interface Bend {
  /** metres to either side */
  readonly amplitude: number;
  readonly wave: number;
}

export const STRAIGHT: Bend = { amplitude: 0, wave: 400 };
export const MAIN: Bend = { amplitude: 18, wave: 1300 };
export const COUNTRY: Bend = { amplitude: 24, wave: 760 };
export const LANE: Bend = { amplitude: 22, wave: 420 };

/** Metres east and north of the district's middle, point by point: `0 0, 120 -40`. */
export type Through = string;

/** What a railway does where a road meets it: it runs over, beneath, or at the same height. */
export interface RailMeeting {
  readonly how: 'arch' | 'over' | 'level';
  /** tags of the driven road under an arch, or of the crossing node */
  readonly tags?: Tags;
}

/** How a line meets others. */
export interface Meeting {
  /** never meets others at the same height, apart from lines that name it in `joins` */
  readonly separate?: boolean;
  /** passes beneath separate roads instead of bridging them */
  readonly under?: boolean;
  /** in the order in which it meets railways; the last one holds for the rest */
  readonly rail?: readonly RailMeeting[];
  /** goes through water instead of over it */
  readonly ford?: Tags;
  readonly bridge?: Tags;
  /** separate lines that its ends may run into */
  readonly joins?: readonly string[];
}

export interface RoadPlan extends Meeting {
  readonly key: string;
  readonly bend: Bend;
  readonly tags: Tags;
  readonly through: Through;
}

export interface AreaPlan {
  readonly tags: Tags;
  readonly ring: Through;
}

/** Something on no line: a place name, a water tap. */
export interface SpotPlan {
  readonly x: number;
  readonly y: number;
  readonly tags: Tags;
}

/** A short road of a single place. */
export interface SitePlan {
  readonly key: string;
  readonly through: Through;
  readonly tags: Tags;
  /** what stands on one of its vertices */
  readonly stands?: { readonly vertex: number | 'middle'; readonly tags: Tags };
  readonly span?: { readonly fromM: number; readonly toM: number; readonly tags: Tags };
}

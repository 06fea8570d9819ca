/**
 * A planned or recorded drive as its file gives it: positions in driving order, in unbroken segments.
 * The jump between two segments is not driven.
 */
export interface Route {
  /** the track's or route's own name, '' when it has none */
  readonly name: string;
  readonly kind: 'track' | 'route';
  /** 1-based place among the file's tracks or routes of this kind */
  readonly number: number;
  /** none without a position; one of a single position has nothing to drive */
  readonly segments: readonly RouteSegment[];
  /** where its file, written by this program, says that the vehicle stops */
  readonly stops?: readonly RouteStop[];
  /** where its file, written by this program, says that its end can only be left by turning round */
  readonly turnAtEnd?: true;
}

/** A place on the drive where the vehicle has business, so that roads for those who go there are open to it. */
export interface RouteStop {
  readonly lat: number;
  readonly lon: number;
  /** metres along the drive, by which one of several passes is meant */
  readonly atM?: number;
}

/** WGS 84 degrees, same length each; `timeMs` is Unix time, NaN where a position has no time. */
export interface RouteSegment {
  readonly lat: Float64Array;
  readonly lon: Float64Array;
  readonly timeMs: Float64Array;
  /** metres as the file has them, NaN where a position has none; absent where none has */
  readonly elevationM?: Float64Array;
}

/** Everything drivable that one file holds, and what had to be said while reading it. */
export interface RouteFile {
  /** tracks before routes, each in the file's order, those without positions included */
  readonly routes: readonly Route[];
  readonly waypoints: number;
  /** how many of the routes' positions are vendors' shape points */
  readonly shapePoints: number;
  /** sentences for the user: gaps left out, jumps, leniencies taken */
  readonly notes: readonly string[];
}

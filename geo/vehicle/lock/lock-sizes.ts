/** What chalk and tape told of a vehicle at full lock. Metres. */
export interface YardMeasures {
  /** the inner rear tyre's chalked circle, straight across from the middle of its mark to the middle of its mark */
  readonly rearWheelCircleM?: number | undefined;
  /** how far the tail's farthest mark lay outside the line of the side, pulling away from straight at full lock */
  readonly tailOutM?: number | undefined;
  /** how far ahead of where the rear axle stood that mark lay, behind it negative */
  readonly tailAheadM?: number | undefined;
  /** the card's rack was on when the tail was marked */
  readonly withRack?: boolean | undefined;
  /** how far off the tape and each chalk mark may be, either way */
  readonly tapeOffM?: number | undefined;
  readonly chalkOffM?: number | undefined;
}

/** The sizes of a card that its turning rests on. Metres. */
export interface LockSizes {
  readonly wheelbaseM: number;
  readonly frontOverhangM: number;
  /** body, without a rack */
  readonly rearOverhangM: number;
  readonly widthM: number;
  readonly trackM?: number | undefined;
  readonly rack?: { readonly lengthM: number; readonly widthM: number } | undefined;
  readonly turningCircleM?: number | undefined;
  readonly turningCircleWallM?: number | undefined;
  readonly rearAxleRadiusMinM?: number | undefined;
  readonly measured?: YardMeasures | undefined;
}

/** Wheels stand about this far inside the body's sides where the track is not given. Metres; common practice, no source. */
const TRACK_INSIDE_M = 0.5;

/** Between the middles of two wheels of one axle: as given, else as usual under a body so wide. Metres. */
export function trackOf({ trackM, widthM }: Pick<LockSizes, 'trackM' | 'widthM'>): number {
  return trackM ?? Math.max(widthM - TRACK_INSIDE_M, 0.5 * widthM);
}

import { type GuidePath, shapeOf } from './guide-path.ts';
import { alongArc, ORIGIN, type Pose } from './motion.ts';

/** A piece on the ground: it begins at a place and a heading, and at a distance along the path. */
interface LaidPiece {
  readonly fromM: number;
  readonly lengthM: number;
  readonly curvature: number;
  readonly xM: number;
  readonly yM: number;
  readonly headingRad: number;
  readonly cos: number;
  readonly sin: number;
}

/** A place told by the path: how far along it, and how far to its left. Metres. */
interface BesidePath {
  stationM: number;
  leftM: number;
}

export interface LaidPath {
  readonly lengthM: number;
  readonly pieces: readonly LaidPiece[];
}

/** Lays a path on the ground, with the straights before and behind it that the vehicle stands on. */
export function layPath(path: GuidePath, start: Pose = ORIGIN): LaidPath {
  const pieces: LaidPiece[] = [laidPiece({ ...start, fromM: 0 }, 0, 0)];
  let at = { ...start, fromM: 0 };
  for (const piece of path.pieces) {
    const { lengthM, curvature } = shapeOf(piece);
    pieces.push(laidPiece(at, lengthM, curvature));
    at = { ...alongArc(at, lengthM, curvature * lengthM), fromM: at.fromM + lengthM };
  }
  pieces.push(laidPiece(at, 0, 0));
  return { lengthM: at.fromM, pieces };
}

function laidPiece(at: Pose & { readonly fromM: number }, lengthM: number, curvature: number): LaidPiece {
  return { ...at, lengthM, curvature, cos: Math.cos(at.headingRad), sin: Math.sin(at.headingRad) };
}

/**
 * Tells places beside the path, for one point that moves little from call to call: the answer is the foot on the stretch
 * the point runs along, not on another that happens to pass near. The object returned is used again by the next call.
 */
export function besidePath({ pieces }: LaidPath): (xM: number, yM: number) => BesidePath {
  const found: BesidePath = { stationM: 0, leftM: 0 };
  const last = pieces.length - 1;
  let index = 0;
  return (xM, yM) => {
    let came = 0;
    for (;;) {
      const piece = pieces[index]!;
      footOn(piece, xM, yM, found);
      const along = found.stationM - piece.fromM;
      const step = along < 0 && index > 0 ? -1 : along > piece.lengthM && index < last ? 1 : 0;
      // a point inside a bend, nearer to the turning centre than the path is wide there, has no foot of its own
      if (step === 0 || step === -came) return found;
      came = step;
      index += step;
    }
  };
}

function footOn(piece: LaidPiece, xM: number, yM: number, found: BesidePath): void {
  const dx = xM - piece.xM;
  const dy = yM - piece.yM;
  const { cos, sin } = piece;
  const along = dx * cos + dy * sin;
  const left = dy * cos - dx * sin;
  if (piece.curvature === 0) {
    found.stationM = piece.fromM + along;
    found.leftM = left;
    return;
  }
  const side = Math.sign(piece.curvature);
  const radiusM = 1 / Math.abs(piece.curvature);
  // seen from the turning centre, the beginning straight below it
  const inward = radiusM - left * side;
  let turned = Math.atan2(along, inward);
  // an arc of more than half a turn: the round nearest to the last answer
  const lastTurned = (found.stationM - piece.fromM) / radiusM;
  turned += 2 * Math.PI * Math.round((lastTurned - turned) / (2 * Math.PI));
  found.stationM = piece.fromM + turned * radiusM;
  found.leftM = (radiusM - Math.sqrt(along * along + inward * inward)) * side;
}

/** Radians in a degree. */
const RAD = Math.PI / 180;

/** Degrees as radians. */
export function toRad(degrees: number): number {
  return degrees * RAD;
}

/** Radians as degrees. */
export function toDeg(radians: number): number {
  return radians / RAD;
}

/** The smaller angle between two directions in degrees, 0 to 180. */
export function turnDeg(fromDeg: number, toDegrees: number): number {
  const turn = Math.abs(fromDeg - toDegrees) % 360;
  return turn > 180 ? 360 - turn : turn;
}

/** The turn from one compass direction (0 to 360) to another, degrees clockwise, -180 ≤ t < 180: negative to the left. */
export function turnRightDeg(fromDeg: number, toDegrees: number): number {
  return ((toDegrees - fromDeg + 540) % 360) - 180;
}

/** How far clockwise from one compass direction (0 to 360) to another, 0 ≤ t < 360. */
export function clockwiseDeg(fromDeg: number, toDegrees: number): number {
  return (toDegrees - fromDeg + 360) % 360;
}

/** An angle brought into -π … π. */
export function wrapRad(radians: number): number {
  return Math.atan2(Math.sin(radians), Math.cos(radians));
}

/** The same longitude difference, brought into -180…180 so that the antimeridian is no jump. */
export function wrapLon(degrees: number): number {
  if (degrees >= -180 && degrees <= 180) return degrees;
  const turns = (((degrees + 180) % 360) + 360) % 360;
  return turns - 180;
}

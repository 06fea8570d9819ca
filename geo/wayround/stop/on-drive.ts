import type { Trip } from '../past/trip.ts';
import type { Snapped } from '../plan/snap.ts';

/** Farther from the pass looked at, another pass is meant. Metres. */
const SAME_PASS_M = 4_000;
/** A place so far beside a road of the drive is reached from it. Metres. */
const BESIDE_M = 60;

/** Where the drive itself goes by a place on its road: metres along it, of several passes the one looked at. */
export function onDrive(
  { steps, field }: Trip,
  { directed, atM, awayM }: Snapped,
  nearM: number,
): number | undefined {
  if (awayM > BESIDE_M) return undefined;
  const { lengthM } = field.costs.graph;
  const passed = steps.flatMap((step) => {
    if (!directed.includes(step.directed)) return [];
    const edgeM = lengthM[step.directed >> 1]!;
    const alongM = step.directed % 2 === 0 ? atM : edgeM - atM;
    // a step that begins midway ends at the edge's head, or is a piece of it
    const m = step.fromTail ? step.fromM + alongM : step.toM - (edgeM - alongM);
    return m >= step.fromM - 1 && m <= step.toM + 1 && Math.abs(m - nearM) < SAME_PASS_M ? [m] : [];
  });
  return passed.sort((a, b) => Math.abs(a - nearM) - Math.abs(b - nearM))[0];
}

/** Gathering speed and braking of a loaded motorhome, average, m/s². Common practice, no source. */
const CHANGE = 0.7;
/** Nothing is passed more slowly than this, m/s, so that no step takes for ever. */
const LEAST_MPS = 1;

/** What holds the speed along a trace: step i leads from position i to i + 1, so positions are one more than steps. */
export interface SpeedBounds {
  readonly lengthM: Float64Array;
  /** speed held on a step when nothing slows, m/s */
  readonly cruiseMps: Float64Array;
  /** 1 where a step goes at its own speed whatever lies at its ends (ferries, off the map) */
  readonly steady: Uint8Array;
  /** by position: speed at which it can be passed, m/s; Infinity where it does not slow */
  readonly passMps: Float64Array;
}

/**
 * Seconds on each step, starting and ending at a standstill: positions are passed no faster than allowed,
 * and speed changes by at most CHANGE (v² = u² + 2 a s, once forwards and once backwards).
 */
export function stepSeconds(bounds: SpeedBounds): Float64Array {
  const { lengthM, cruiseMps, steady } = bounds;
  const steps = lengthM.length;
  const speed = positionSpeeds(bounds);
  const seconds = new Float64Array(steps);
  for (let i = 0; i < steps; i++) {
    const length = lengthM[i]!;
    const cruise = cruiseMps[i]!;
    if (steady[i] === 1) seconds[i] = length / cruise;
    else seconds[i] = changingSeconds(length, cruise, speed[i]!, speed[i + 1]!);
  }
  return seconds;
}

function positionSpeeds({ lengthM, cruiseMps, steady, passMps }: SpeedBounds): Float64Array {
  const steps = lengthM.length;
  const speed = new Float64Array(steps + 1);
  const reach = (from: number, length: number) => Math.sqrt(from * from + 2 * CHANGE * length);
  const held = (i: number) => (i < 0 || i >= steps ? LEAST_MPS : steady[i] === 1 ? LEAST_MPS : cruiseMps[i]!);
  for (let i = 0; i <= steps; i++) {
    const allowed = Math.max(LEAST_MPS, Math.min(held(i - 1), held(i), passMps[i]!));
    const reached = i === 0 ? LEAST_MPS : reach(speed[i - 1]!, lengthM[i - 1]!);
    speed[i] = Math.min(allowed, reached);
  }
  for (let i = steps - 1; i >= 0; i--) speed[i] = Math.min(speed[i]!, reach(speed[i + 1]!, lengthM[i]!));
  return speed;
}

/** Gather speed, hold it where there is room, brake. */
function changingSeconds(length: number, cruise: number, from: number, to: number): number {
  const top = Math.min(cruise, Math.sqrt((from * from + to * to) / 2 + CHANGE * length));
  const peak = Math.max(top, from, to);
  const heldM = length - (2 * peak * peak - from * from - to * to) / (2 * CHANGE);
  return (2 * peak - from - to) / CHANGE + Math.max(0, heldM) / peak;
}

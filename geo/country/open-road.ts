import type { Limit, OpenRoadLimits } from './rule.ts';

interface Limits {
  readonly rural: Limit;
  readonly dual?: Limit;
  readonly expressway?: Limit;
  readonly dualExpressway?: Limit;
  readonly motorway: Limit;
}

/**
 * General limits outside towns, km/h. What is not given follows from its neighbours: a dual carriageway as a single
 * one, an expressway as the road it is built like, one with two carriageways as the more generous of both.
 */
export function openRoad({ rural, motorway, ...given }: Limits): OpenRoadLimits {
  const dual = given.dual ?? rural;
  const expressway = given.expressway ?? rural;
  return {
    rural,
    dual,
    expressway,
    dualExpressway: given.dualExpressway ?? faster(dual, expressway),
    motorway,
  };
}

function faster(a: Limit, b: Limit): Limit {
  return a === 'none' || b === 'none' ? 'none' : Math.max(a, b);
}

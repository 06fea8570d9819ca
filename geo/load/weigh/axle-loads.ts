/** What stands on each axle. Kilograms. */
export interface AxleLoads {
  readonly frontKg: number;
  readonly rearKg: number;
}

/** A mass at its place: metres rearwards from the front axle. */
export interface Placed {
  readonly massKg: number;
  readonly xM: number;
}

/**
 * What one mass puts on each axle, by moments about the axles: rear m·x/L, front m·(1 − x/L), with the wheelbase L.
 * Behind the rear axle the front is relieved, ahead of the front axle the rear; the two always add up to the mass.
 * The vehicle stands on level ground, on two axles.
 */
export function axleShare({ massKg, xM }: Placed, wheelbaseM: number): AxleLoads {
  const rearKg = (massKg * xM) / wheelbaseM;
  return { frontKg: massKg - rearKg, rearKg };
}

/** The axles' loads with every item added to what they carry already. */
export function axleLoads(base: AxleLoads, items: readonly Placed[], wheelbaseM: number): AxleLoads {
  let { frontKg, rearKg } = base;
  for (const item of items) {
    const share = axleShare(item, wheelbaseM);
    frontKg += share.frontKg;
    rearKg += share.rearKg;
  }
  return { frontKg, rearKg };
}

/** Where the centre of mass lies, metres rearwards from the front axle, from what the two axles carry: x = rear·L/gross. */
export function centreOfMassM({ frontKg, rearKg }: AxleLoads, wheelbaseM: number): number {
  return (rearKg * wheelbaseM) / (frontKg + rearKg);
}

import type { LoadFigures, LoadLimit } from './figures.ts';
import { NOISE_KG } from './noise.ts';

/** limit − load = spare, in kilograms. */
export interface PlateSum {
  readonly limit: LoadLimit;
  readonly plateKg: number;
  readonly loadKg: number;
  readonly spareKg: number;
  readonly over: boolean;
  /** worked out from an empty weight that nobody weighed */
  readonly estimated: boolean;
}

/** Each plate, and the rack where one is fitted. */
type PlateSums = Readonly<Record<'front' | 'rear' | 'gross', PlateSum>> & { readonly rack?: PlateSum };

/** What each limit holds, what stands on it and what is left. */
export function plateSums(figures: LoadFigures): PlateSums {
  const { plates, spare, frontKg, rearKg, grossKg, rack, estimated, grossEstimated } = figures;
  const axles = { estimated: estimated === true };
  return {
    front: { ...sumOf('front', plates.frontKg, frontKg, spare.frontKg), ...axles },
    rear: { ...sumOf('rear', plates.rearKg, rearKg, spare.rearKg), ...axles },
    gross: {
      ...sumOf('gross', plates.grossKg, grossKg, spare.grossKg),
      estimated: grossEstimated === true,
    },
    ...(rack && { rack: sumOf('rack', rack.limitKg, rack.onKg, rack.spareKg) }),
  };
}

function sumOf(limit: LoadLimit, plateKg: number, loadKg: number, spareKg: number): PlateSum {
  return { limit, plateKg, loadKg, spareKg, over: spareKg < -NOISE_KG, estimated: false };
}

/** The same in the order they are told: both axles, the whole, the rack. */
export function sumsOf(figures: LoadFigures): PlateSum[] {
  const { front, rear, gross, rack } = plateSums(figures);
  return [front, rear, gross, ...(rack ? [rack] : [])];
}

/** Every limit that is exceeded: the plates, and the rack where its limit is on the card. */
export function overSums(figures: LoadFigures): PlateSum[] {
  const sums = sumsOf(figures);
  return figures.over.flatMap((over) => sums.filter(({ limit }) => limit === over));
}

/** What decides: the worst of what is over, else the plate with the least spare. */
export function decidingOf(figures: LoadFigures): PlateSum {
  const [worst] = overSums(figures).sort((a, b) => a.spareKg - b.spareKg);
  return worst ?? plateSums(figures)[figures.bindsFirst];
}

/** Whatever is over besides what decides. */
export function alsoOver(figures: LoadFigures): PlateSum[] {
  const { limit } = decidingOf(figures);
  return overSums(figures).filter((sum) => sum.limit !== limit);
}

/** What is left of one limit, negative when over; nought for a rack that is not there. Kilograms. */
export function spareOf({ spare, rack }: LoadFigures, limit: LoadLimit): number {
  return limit === 'rack' ? (rack?.spareKg ?? 0) : spare[`${limit}Kg`];
}

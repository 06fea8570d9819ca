import type { LocalMoment } from '../../clock/moment.ts';
import { clockOf } from '../../clock/zone.ts';
import { type Leaving, zoneFor } from '../../drive/times/leaving.ts';
import type { Roads } from '../../roads/roads.ts';

/** Clocks are read to so many minutes, and looked up once for each. */
const STEP_MS = 60_000;
const CELL_DEG = 0.1;

/** The clock at a node so many tenths of seconds after setting off. */
export function clockFor(
  roads: Roads,
  leaving: Leaving,
  country: string | undefined,
): (node: number, timeTenths: number) => LocalMoment | undefined {
  const zones = new Map<number, string>();
  const moments = new Map<string, LocalMoment | undefined>();
  return (node, timeTenths) => {
    const [lat, lon] = [roads.nodes.lat[node]!, roads.nodes.lon[node]!];
    const cell = Math.floor(lat / CELL_DEG) * 10_000 + Math.floor(lon / CELL_DEG);
    const zone = zones.get(cell) ?? zoneFor(lat, lon, country);
    zones.set(cell, zone);
    const unixMs = Math.floor((leaving.unixMs + timeTenths * 100) / STEP_MS) * STEP_MS;
    const key = `${zone} ${unixMs}`;
    if (!moments.has(key)) {
      const clock = clockOf(zone, unixMs);
      moments.set(key, clock.ok ? clock.value : undefined);
    }
    return moments.get(key);
  };
}

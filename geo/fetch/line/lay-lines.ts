import { wrapLon } from '../../earth/angles.ts';
import { distanceM } from '../../earth/sphere.ts';
import type { DrawnRoute } from '../../roads/discs.ts';

/** A position of the drive. */
export interface Vertex {
  readonly lat: number;
  /** runs beyond ±180 so that neighbours stay neighbours */
  readonly lon: number;
  /** from the drive's beginning, jumps between segments not counted */
  readonly alongM: number;
  /** length, as drawn, of the leg that leads here; 0 at a line's beginning */
  readonly legM: number;
}

/** A recording that stopped for so little goes on as one line: a question of its own would cost more. */
const JOINED_M = 1_000;

/** The drive as unbroken lines of two or more positions; short jumps between segments are bridged. */
export function layLines(route: DrawnRoute): Vertex[][] {
  const lines: Vertex[][] = [];
  let line: Vertex[] = [];
  let alongM = 0;
  for (const { lat, lon } of route.segments) {
    for (let i = 0; i < lat.length; i++) {
      const last = line.at(-1);
      if (last === undefined) {
        line.push({ lat: lat[i]!, lon: lon[i]!, alongM, legM: 0 });
        continue;
      }
      const legM = distanceM(last.lat, last.lon, lat[i]!, lon[i]!);
      if (i === 0 && legM > JOINED_M) {
        lines.push(line);
        line = [{ lat: lat[i]!, lon: lon[i]!, alongM, legM: 0 }];
        continue;
      }
      if (i > 0) alongM += legM;
      // each longitude is brought next to the one before
      if (legM > 0) line.push({ lat: lat[i]!, lon: last.lon + wrapLon(lon[i]! - last.lon), alongM, legM });
    }
  }
  lines.push(line);
  return lines.filter(({ length }) => length > 1);
}

/** The position so far (0…1) on the leg between two. */
export function vertexBetween(a: Vertex, b: Vertex, share: number): Vertex {
  return {
    lat: a.lat + share * (b.lat - a.lat),
    lon: a.lon + share * (b.lon - a.lon),
    alongM: a.alongM + share * (b.alongM - a.alongM),
    legM: b.legM,
  };
}

import { mix, shareOf } from '../../earth/between.ts';
import type { DriveTrace } from '../times/trace.ts';

export interface AlongPlace {
  readonly atM: number;
  readonly lat: number;
  readonly lon: number;
}

/** Places at even steps along a drive, the start first. */
export function placesEvery({ lat, lon, atM }: DriveTrace, lengthM: number, stepM: number): AlongPlace[] {
  const places: AlongPlace[] = [];
  if (atM.length === 0) return places;
  let i = 0;
  for (let m = 0; m <= lengthM; m += stepM) {
    while (i + 2 < atM.length && atM[i + 1]! < m) i++;
    const next = Math.min(i + 1, atM.length - 1);
    const t = shareOf(m, atM[i]!, atM[next]!);
    places.push({ atM: m, lat: mix(lat[i]!, lat[next]!, t), lon: mix(lon[i]!, lon[next]!, t) });
  }
  return places;
}

import { liesElsewhere } from '../../geo/drive/match-lengths.ts';
import { LOAD_MARGIN_KG } from '../../geo/load/weigh/load-level.ts';
import { headlineOf } from '../../geo/load/weigh/say-plates.ts';
import type { DriveReport } from '../../geo/report/report.ts';
import { sayOverall } from '../../geo/report/say-verdict.ts';

/** The verdict's sentence on a terminal; where no map is named and the shelf has none, how to get one. */
export function sayOverallHere(report: DriveReport): string {
  return liesElsewhere(report.match, report.route.lengthM) && report.map.sources.length === 0
    ? 'Nothing on the shelf has roads under this drive, so nothing on it is checked. Get its map with: lanegauge shelf fetch --route DRIVE.gpx --by region, or lanegauge shelf import MAP.osm.pbf.'
    : sayOverall(report);
}

/** `AS LOADED OVER BY 26 kg…`; undefined where it is not. An overload is no limit of the road's, so the verdict stays. */
export function sayOver({ load }: DriveReport): string | undefined {
  return load === undefined || load.over.length === 0
    ? undefined
    : `AS LOADED ${headlineOf(load, { doubtful: false, marginKg: LOAD_MARGIN_KG })}`;
}

/** 1 where something bars the drive or the vehicle is over a plate as loaded, else 0. */
export function exitFor({ verdict, load }: DriveReport): 0 | 1 {
  return verdict === 'barred' || (load !== undefined && load.over.length > 0) ? 1 : 0;
}

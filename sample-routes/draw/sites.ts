import { append } from '../../geo/lists.ts';
import { HARBOUR_ROADS } from '../plan/harbour.ts';
import {
  BELL_INN,
  BY_ROADS,
  CLIFF_TUNNEL,
  FOOTBRIDGE,
  SITE_AREAS,
  SITE_ROADS,
  SITE_SPOTS,
} from '../plan/sites.ts';
import type { Bend, SitePlan } from '../plan/words.ts';
import { layFerry } from './ferry.ts';
import { points } from './lines/curve.ts';
import { type Line, markSpan, placeOn } from './lines/line.ts';
import { drawLine, makeLine } from './lines/make-line.ts';
import { item } from './lines/plane.ts';
import type { Site } from './streets.ts';

const EASY: Bend = { amplitude: 3, wave: 120 };

/** Single places that the drives call at: the hire yard, pitches, fuel, the beach, the harbour and its ferry. */
export function laySites(site: Site): void {
  for (const plan of [...SITE_ROADS, ...HARBOUR_ROADS]) laySite(site, plan);
  layFerry(site.sheet);
  for (const plan of BY_ROADS) laySite(site, plan);
  for (const { tags, ring } of [...SITE_AREAS, BELL_INN]) site.sheet.areas.push({ tags, ring: points(ring) });
  for (const corner of points(BELL_INN.ring)) site.ground.take(corner, 4);
  append(
    site.sheet.spots,
    SITE_SPOTS.map((spot) => ({ ...spot })),
  );
  digTunnel(site.sheet.line(CLIFF_TUNNEL.on));
  const { key, through, tags } = FOOTBRIDGE;
  site.sheet.lay(makeLine(key, 'path', points(through), tags, { separate: true }));
}

function laySite({ sheet, random }: Site, plan: SitePlan): void {
  const line = sheet.lay(drawLine(random, 'road', { ...plan, bend: EASY }));
  const { stands, span } = plan;
  if (stands !== undefined) {
    const index = stands.vertex === 'middle' ? Math.floor(line.pts.length / 2) : stands.vertex;
    item(line.pts, index).tags = { ...stands.tags };
  }
  if (span !== undefined) markSpan(line, span.fromM, span.toM, span.tags);
}

function digTunnel(line: Line): void {
  const { metres } = placeOn(line, CLIFF_TUNNEL);
  markSpan(line, metres - CLIFF_TUNNEL.halfM, metres + CLIFF_TUNNEL.halfM, CLIFF_TUNNEL.tags);
}

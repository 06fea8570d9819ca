import { areasOf } from '../../drive/beside/areas.ts';
import { type DrivenSegment, drivenSegments } from '../../drive/beside/driven-line.ts';
import { crossingM, segmentsNear } from '../../drive/beside/meet-way.ts';
import { oncePerDrive } from '../../drive/once-per-drive.ts';
import { largest } from '../../lists.ts';
import type { KindOf } from '../../report/kinds.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import type { Roads, Tags } from '../../roads/roads.ts';
import { pick } from '../../tags/pick.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place } from '../places.ts';
import type { SubjectRule } from '../rule.ts';
import { joinRuns, type Piece, type Run } from '../run.ts';
import { sayZone } from './say-zone.ts';

/** Out and in again within this much is still the zone. Metres. */
const GAP_M = 300;
/** A zone is looked for at every corner of the road and every so many metres. */
const STEP_M = 100;

interface ZonePiece extends Piece {
  /** index into Roads.ways of the zone's outline */
  readonly zone: number;
}

/**
 * Low-emission and limited-traffic zones the drive enters or starts in. What is let in there is not mapped, nor on the
 * card: unknown. Of a zone whose outline is not whole in the map only its edge can be told.
 */
export const zone: SubjectRule = ({ drive, roads }) =>
  joinRuns(zonePieces(drive, roads), GAP_M, (piece) => String(piece.zone)).map((run) => draftOf(roads, run));

const zonePieces = oncePerDrive((drive, roads): ZonePiece[] => {
  const places = drivenWays(drive, roads);
  return drivenSegments(drive, roads).flatMap((segment) => {
    const place = places[segment.stretch];
    return place === undefined ? [] : [...inside(roads, place, segment), ...overEdges(roads, place, segment)];
  });
});

function inside(roads: Roads, place: Place, segment: DrivenSegment): ZonePiece[] {
  const lengthM = segment.toM - segment.fromM;
  const steps = Math.max(1, Math.ceil(lengthM / STEP_M));
  return Array.from({ length: steps }, (_, step) => {
    const t = (step + 0.5) / steps;
    const lat = segment.lat1 + t * (segment.lat2 - segment.lat1);
    const lon = segment.lon1 + t * (segment.lon2 - segment.lon1);
    const fromM = segment.fromM + (step / steps) * lengthM;
    return areasOf(roads)
      .at(lat, lon)
      .filter((way) => isZone(roads, way))
      .map((way) => ({ place, fromM, toM: fromM + lengthM / steps, zone: way }));
  }).flat();
}

function overEdges(roads: Roads, place: Place, segment: DrivenSegment): ZonePiece[] {
  const { openEdges } = areasOf(roads);
  if (openEdges.size === 0) return [];
  return segmentsNear(roads, segment, 'around')
    .filter(({ way }) => openEdges.has(way) && isZone(roads, way))
    .flatMap((ref) => {
      const atM = crossingM(roads, segment, ref);
      return atM === undefined ? [] : [{ place, fromM: atM, toM: atM, zone: ref.way }];
    });
}

function isZone(roads: Roads, way: number): boolean {
  return zoneKind(mappedOn(roads, way)) !== undefined;
}

function zoneKind(tags: Tags): KindOf<'zone'> | undefined {
  switch (tags['boundary']) {
    case 'low_emission_zone':
    case 'low_emission':
      return 'low emission';
    case 'limited_traffic_zone':
    case 'limited_traffic':
      return 'limited traffic';
    default:
      return undefined;
  }
}

function draftOf(roads: Roads, run: Run<ZonePiece>): Draft {
  const [{ zone: way }] = run;
  const tags = mappedOn(roads, way);
  const kind = zoneKind(tags) ?? 'limited traffic';
  return {
    subject: 'zone',
    kind,
    level: 'unknown',
    wants: 'permission',
    again: 'folded',
    // the ids of all roads driven in a town say nothing: the zone is what it is about
    run: [
      run[0],
      { ...run[0], fromM: run.at(-1)?.fromM ?? run[0].fromM, toM: largest(run.map(({ toM }) => toM)) },
    ],
    others: [{ type: 'way', id: roads.ways.id[way]! }],
    tags: pick(tags, ['boundary', 'name', 'motor_vehicle', 'access', 'opening_hours', 'website']),
    ...sayZone(kind, tags['name']),
  };
}

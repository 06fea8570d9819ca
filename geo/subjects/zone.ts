import { areasOf } from '../around/areas.ts';
import { drivenSegments } from '../around/driven-line.ts';
import type { Tags } from '../roads/roads.ts';
import { drivenWays, type Place } from './places.ts';
import type { RuleInput, SubjectRule } from './rule.ts';
import { findingsOfRuns, joinRuns, type Piece, pick, type Run, type RunDraft } from './runs.ts';

/** Out and in again within this much is still the zone. Metres. */
const GAP_M = 300;
/** A zone is looked for at every corner of the road and every so many metres. */
const STEP_M = 100;

interface ZonePiece extends Piece {
  /** index into Roads.ways of the zone's outline */
  readonly zone: number;
}

/**
 * Low-emission and limited-traffic zones the drive enters or starts in, where the map draws them as one closed line.
 * What is let in there is not mapped, nor on the card: unproved.
 */
export const zone: SubjectRule = (input) => {
  const pieces = drivenSegments(input.drive, input.roads).flatMap((segment) => {
    const place = drivenWays(input.drive, input.roads)[segment.stretch];
    if (place === undefined) return [];
    const steps = Math.max(1, Math.ceil((segment.toM - segment.fromM) / STEP_M));
    return Array.from({ length: steps }, (_, step) => {
      const t = (step + 0.5) / steps;
      return zonesAt(
        input,
        place,
        segment.lat1 + t * (segment.lat2 - segment.lat1),
        segment.lon1 + t * (segment.lon2 - segment.lon1),
        segment.fromM + (step / steps) * (segment.toM - segment.fromM),
        segment.fromM + ((step + 1) / steps) * (segment.toM - segment.fromM),
      );
    }).flat();
  });
  return findingsOfRuns(
    input,
    'zone',
    joinRuns(pieces, GAP_M, (piece) => String(piece.zone)).map((run) => draftOf(input, run)),
  );
};

function zonesAt(
  input: RuleInput,
  place: Place,
  lat: number,
  lon: number,
  fromM: number,
  toM: number,
): ZonePiece[] {
  return areasOf(input.roads)
    .at(lat, lon)
    .filter((way) => zoneKind(input.roads.ways.tags[way] ?? {}) !== undefined)
    .map((way) => ({ place, fromM, toM, zone: way }));
}

function zoneKind(tags: Tags): 'emission' | 'traffic' | undefined {
  switch (tags['boundary']) {
    case 'low_emission_zone':
    case 'low_emission':
      return 'emission';
    case 'limited_traffic_zone':
    case 'limited_traffic':
      return 'traffic';
    default:
      return undefined;
  }
}

function draftOf(input: RuleInput, run: Run<ZonePiece>): RunDraft {
  const [{ zone: way }] = run;
  const tags = input.roads.ways.tags[way] ?? {};
  const name = tags['name'] === undefined ? '' : ` (${tags['name']})`;
  const traffic = zoneKind(tags) === 'traffic';
  return {
    level: 'unproved',
    // the ids of all roads driven in a town say nothing: the zone is what it is about
    run: [
      run[0],
      { ...run[0], fromM: run.at(-1)?.fromM ?? run[0].fromM, toM: Math.max(...run.map(({ toM }) => toM)) },
    ],
    others: [{ type: 'way', id: input.roads.ways.id[way] as number }],
    tags: pick(tags, ['boundary', 'name', 'motor_vehicle', 'access', 'opening_hours', 'website']),
    say: traffic
      ? `The drive enters a zone of limited traffic${name}; who may drive there, and when, is not settled by the map.`
      : `The drive enters a low-emission zone${name}; which vehicles it keeps out is not mapped.`,
    advice: traffic
      ? 'Ask the town or the host for a permit before the day, or go round: cameras fine by the number plate.'
      : 'Check this vehicle’s emission class against the zone’s rules, and get the badge or pay before driving in.',
  };
}

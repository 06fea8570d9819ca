import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import { refuseEndless } from '../../../../geo/drive/refuse-endless.ts';
import { given } from '../../../../geo/given.ts';
import { loadResult } from '../../../../geo/load/load-result.ts';
import { fail, ok, type Result } from '../../../../geo/result.ts';
import { changedName, routeWithWay } from '../../../../geo/wayround/take-way.ts';
import type { ValueOf } from '../../../contract/calls.ts';
import type { FollowedDrive } from '../../../contract/followed-drive.ts';
import { PROGRAM } from '../../../version.ts';
import type { ShelfRoads } from '../../shelf/roads-from-shelf.ts';
import { afterLacking } from '../../shelf/say-lacking.ts';
import { type PlanOnAnyMap, planOn, planRead } from '../../way-round/plan-read.ts';
import { type CheckOnAnyMap, waysOn, waysRead } from '../../way-round/ways-past.ts';
import { checkInputOf } from '../check-open-drive.ts';
import { driveForPage, type OpenDrive } from '../drive-for-page.ts';
import { keepDrive } from '../open-drives.ts';
import type { EngineCalls, EngineHandlers, WorkHooks } from '../protocol.ts';
import { type EngineState, findDrive } from '../state.ts';
import { mapsUsed, readShelf } from './read-shelf.ts';
import { findServices } from './services.ts';

/** Ways past what stops an open drive, and drives changed by them. */
export function wayRoundHandlers(
  state: EngineState,
): Pick<EngineHandlers, 'wayRound' | 'takeWay' | 'planDrive' | 'services'> {
  return {
    wayRound: (request, hooks) => findWays(state, request, hooks),
    takeWay: (request, hooks) => takeWay(state, request, hooks),
    planDrive: (request, hooks) => planAnew(state, request, hooks),
    services: (request, hooks) => findServices(state, request, hooks),
  };
}

async function findWays(
  state: EngineState,
  { driveId, past, prefer, leaveAt, ...asked }: EngineCalls['wayRound']['request'],
  { onProgress, lookUp }: WorkHooks,
): Promise<Result<ValueOf<'wayRound'>>> {
  const found = findDrive(state, driveId);
  if (!found.ok) return found;
  const opened = found.value;
  const input = checkInputOf(opened, asked, lookUp);
  if (!input.ok) return input;
  onProgress({ what: 'Looking for ways round' });
  const check: CheckOnAnyMap = { ...input.value, ...given({ leaveAt }), followed: opened };
  const wanted = given({ past, prefer });
  const read = readShelf(state, lookUp);
  const ways = read === undefined ? waysOn(opened.roads, check, wanted) : await waysRead(read, check, wanted);
  if (!ways.ok) return ways;
  const { waysRound, noWayRound } = ways.value;
  const atEdge = noWayRound.some(({ kind }) => kind === 'edge of the map');
  return ok({
    waysRound: [...waysRound],
    noWayRound: [...noWayRound],
    wider: atEdge ? 'fetch' : 'none',
  });
}

/** The changed drive is followed on the roads about it; the drive before stays open on its own. */
async function takeWay(
  state: EngineState,
  { driveId, newId, ...way }: EngineCalls['takeWay']['request'],
  { onProgress, lookUp }: WorkHooks,
): Promise<Result<FollowedDrive>> {
  const found = findDrive(state, driveId);
  if (!found.ok) return found;
  const before = found.value;
  onProgress({ what: 'Following the new way' });
  const name = changedName(before.route.name || before.file.replace(/\.gpx$/i, ''));
  const route = { ...routeWithWay(before, way), name };
  let heard: ShelfRoads | undefined;
  const read = readShelf(state, lookUp, (found) => {
    heard = found;
  });
  const roads = read === undefined ? before.roads : await read(route, undefined);
  const drive = followRoads(route, roads, { lookUp });
  const endless = refuseEndless(drive);
  if (endless !== undefined) return { ok: false, error: endless };
  const { origin: _, ...same } = before;
  const opened: OpenDrive = { ...same, file: 'changed here', route, roads, drive };
  keepDrive(state.drives, newId, opened);
  return ok({ ...driveForPage(newId, opened, [route]), ...given({ shelf: heard && mapsUsed(heard) }) });
}

const NO_MAP = fail('no-map', 'No map is open. Open a map first.');

async function planAnew(
  state: EngineState,
  { newId, places, name, prefer, leaveAt, ...asked }: EngineCalls['planDrive']['request'],
  { onProgress, lookUp }: WorkHooks,
): Promise<Result<ValueOf<'planDrive'>>> {
  if (!state.map) return NO_MAP;
  onProgress({ what: 'Laying out the drive' });
  const { vehicle, load, margins, units, country, day, made, localNotes } = asked;
  const loaded = load === undefined ? undefined : loadResult(vehicle, load.items);
  if (loaded?.ok === false) return loaded;
  const plan: PlanOnAnyMap = {
    places: places.map(({ stop = false, ...place }) => ({ ...place, stop })),
    card: vehicle,
    program: PROGRAM,
    made,
    lookUp,
    ...given({ load: loaded?.value, margins, units, country, day, prefer, name, leave: leaveAt, localNotes }),
  };
  const damaged = new Set(state.shelf?.damaged);
  let last: ShelfRoads | undefined;
  const read = readShelf(state, lookUp, (heard) => {
    last = heard;
    for (const map of heard.damaged) damaged.add(map);
  });
  const planned = read === undefined ? planOn(state.map, plan) : await planRead(read, plan);
  if (!planned.ok)
    return {
      ok: false,
      error: afterLacking(planned.error, {
        damaged: [...damaged],
        forbidden: state.shelf?.forbidden ?? [],
      }),
    };
  const { route, drive, roads, stops, say, ofPlaces } = planned.value;
  const opened: OpenDrive = { route, file: 'planned here', drive, roads, stops, notes: ofPlaces };
  keepDrive(state.drives, newId, opened);
  return ok({
    drive: { ...driveForPage(newId, opened, [route]), ...given({ shelf: last && mapsUsed(last) }) },
    say: [...say],
  });
}

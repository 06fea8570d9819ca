import { given } from '../../../../geo/given.ts';
import { ok, type Result } from '../../../../geo/result.ts';
import { REACH_M } from '../../../../geo/wayround/stop/candidates.ts';
import type { ValueOf } from '../../../contract/calls.ts';
import type { OpenShelf } from '../../shelf/open-shelf.ts';
import { servicePointsAlong } from '../../shelf/service-points.ts';
import { servicesOn, servicesRead } from '../../way-round/services-along.ts';
import type { CheckOnAnyMap } from '../../way-round/ways-past.ts';
import { checkInputOf } from '../check-open-drive.ts';
import type { EngineCalls, WorkHooks } from '../protocol.ts';
import { type EngineState, findDrive } from '../state.ts';
import { readShelf } from './read-shelf.ts';

/** Places near an open drive where its vehicle can see to its tanks. */
export async function findServices(
  state: EngineState,
  { driveId, wanted, prefer, leaveAt, ...asked }: EngineCalls['services']['request'],
  { onProgress, lookUp }: WorkHooks,
): Promise<Result<ValueOf<'services'>>> {
  const found = findDrive(state, driveId);
  if (!found.ok) return found;
  const opened = found.value;
  const input = checkInputOf(opened, asked, lookUp);
  if (!input.ok) return input;
  onProgress({ what: 'Looking for places on the way' });
  const check: CheckOnAnyMap = { ...input.value, ...given({ leaveAt }), followed: opened };
  const looked = { wanted, ...given({ prefer }) };
  const { shelf } = state;
  const read = readShelf(state, lookUp);
  if (shelf === undefined || read === undefined) {
    const here = servicesOn(opened.roads, check, looked);
    return here.ok ? ok({ ...here.value, say: state.mapInPart ? [IN_PART] : [] }) : here;
  }
  const { points, sound } = servicePointsAlong(shelf, opened.route, REACH_M);
  const there = await servicesRead(read, check, looked, points);
  if (!there.ok) return there;
  return ok({ ...there.value, say: sayLacking(shelf, sound) });
}

const IN_PART =
  'Of this map only what lies near the drive was read: most places farther off than 500 m are missing from this list. Put the map on the shelf to see them all.';

/** Why places may be missing. @param sound whether all that was looked for in the open maps could be read */
function sayLacking({ damaged, forbidden }: OpenShelf, sound: boolean): string[] {
  return [
    ...(sound && damaged.length === 0
      ? []
      : ['A part of the shelf is damaged: places in it are missing from this list.']),
    ...(forbidden.length === 0
      ? []
      : ['A part of the shelf may not be read by this user: places in it are missing from this list.']),
  ];
}

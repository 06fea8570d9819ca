import type { Route } from '../../../geo/drive/gpx/route.ts';
import { given } from '../../../geo/given.ts';
import type { Result } from '../../../geo/result.ts';
import { capital } from '../../../geo/units/text.ts';
import { handedFacts } from '../../../geo/yard/handed/facts.ts';
import { sha256Of } from '../files/sha256.ts';
import { BARRED } from '../hand-over/barred.ts';
import type { HandedOver } from '../hand-over/hand-over.ts';
import { handedOf } from '../handed/known-of.ts';
import { WIDE_M } from '../way-round/ways-past.ts';
import { checkInputOf, checkOpenDrive } from './check-open-drive.ts';
import type { OpenDrive } from './drive-for-page.ts';
import type { EngineCalls, EngineHandlers, WorkHooks } from './protocol.ts';
import { type EngineState, findDrive } from './state.ts';
import { readShelf } from './ways/read-shelf.ts';

/** Handing over an open drive; its code is loaded when it is first asked for. */
export function handOverHandlers(
  state: EngineState,
): Pick<EngineHandlers, 'handOver' | 'handOverFile' | 'sheetAgain'> {
  return {
    handOver: (request, hooks) => handOverOpen(state, request, hooks),
    async handOverFile(work, { signal, onProgress }) {
      const { handOverFromFiles } = await import('../hand-over/hand-over-from-files.ts');
      const now = () => new Date();
      return handOverFromFiles(work, {
        signal,
        now,
        onProgress: (what) => onProgress({ what: capital(what) }),
      });
    },
    async sheetAgain(request, hooks) {
      const { worseNow } = await import('../handed/out-sheets.ts');
      const now = () => new Date();
      return worseNow(request, { signal: hooks.signal, now });
    },
  };
}

async function handOverOpen(
  state: EngineState,
  request: EngineCalls['handOver']['request'],
  { onProgress, lookUp }: WorkHooks,
): Promise<Result<HandedOver>> {
  const { known, firm, before, evenBarred, ...asked } = request;
  onProgress({ what: 'Checking anew' });
  const found = findDrive(state, asked.driveId);
  if (!found.ok) return found;
  const opened = found.value;
  const checked = checkOpenDrive(state, asked, lookUp);
  if (!checked.ok) return checked;
  const report = checked.value;
  if (report.verdict === 'barred' && evenBarred !== true) return BARRED;
  const input = checkInputOf(opened, asked, lookUp);
  if (!input.ok) return input;
  onProgress({ what: 'Looking for places to turn off' });
  const { isStopped, turnOffsOn } = await import('../way-round/turn-offs-from-files.ts');
  const { leaveAt, localNotes, margins, country, day, load } = asked;
  const read = readShelf(state, lookUp);
  const roads =
    read === undefined || !isStopped(report) ? opened.roads : await read(opened.route, { reachM: WIDE_M });
  const turnOffs = turnOffsOn(roads, { ...input.value, ...given({ leaveAt }), followed: opened }, report);
  if (!turnOffs.ok) return turnOffs;
  onProgress({ what: 'Drawing the sheet' });
  const { handOver } = await import('../hand-over/hand-over.ts');
  const { gpx, track } = opened.origin ?? { gpx: hashOfLine(opened.route), track: 1 };
  const items = load?.items;
  const of = handedOf(known, { gpx, track, vehicleName: report.vehicle.name, load: items });
  const { route } = opened;
  const maps = state.shelf?.parts.map(({ part }) => part.meta);
  const check = { report, route, localNotes, load: items, leaveAt, margins, country, day, maps };
  const facts = handedFacts(check, of, sha256Of);
  return handOver({ ...onlyDrive(opened), report, turnOffs: turnOffs.value, facts, firm, before });
}

function onlyDrive({ route, drive, roads }: OpenDrive): Pick<OpenDrive, 'route' | 'drive' | 'roads'> {
  return { route, drive, roads };
}

/** A drive that was changed or laid out here has no file: it is known by where it runs. */
function hashOfLine({ segments }: Route): string {
  return sha256Of(JSON.stringify(segments.map(({ lat, lon }) => [Array.from(lat), Array.from(lon)])));
}

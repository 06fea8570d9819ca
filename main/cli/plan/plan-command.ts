import { basename, dirname } from 'node:path';
import { given } from '../../../geo/given.ts';
import { loadResult } from '../../../geo/load/load-result.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { clip } from '../../../geo/units/text.ts';
import { writeNew } from '../../services/files/write-new.ts';
import { readYardNotes } from '../../services/library/local-notes.ts';
import { libraryNamed, namedVehicle } from '../../services/library/named-vehicle.ts';
import { shelfFolder } from '../../services/shelf/where-shelf.ts';
import { readLoadFile } from '../../services/vehicle/read-load-file.ts';
import type { PlanOnAnyMap } from '../../services/way-round/plan-read.ts';
import { PROGRAM } from '../../version.ts';
import { yardNamed } from '../arguments.ts';
import { jsonText } from '../json-text.ts';
import { printReport } from '../print-report.ts';
import { EXIT_INTERRUPTED, refuse, type Terminal } from '../terminal.ts';
import type { PlacesNamed } from './named-places.ts';
import { type PlanArguments, readPlanArguments } from './plan-arguments.ts';
import { planInThread } from './plan-thread.ts';

/** `lanegauge plan`. @returns 0 a drive, 1 there is none, 2 input could not be used, 130 interrupted */
export async function planCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  const read = readPlanArguments(words, terminal.folder);
  if (!read.ok) return refuse(read.error.message, terminal);
  const { signal, progress } = terminal;
  const places = await placesOf(read.value, terminal.dataFolder);
  if (!places.ok) return refuse(places.error.message, terminal);
  const plan = await planOf(read.value, places.value, terminal);
  if (!plan.ok) return refuse(plan.error.message, terminal);
  progress.show('laying out the drive');
  const map = { mapPaths: read.value.mapPaths, shelf: shelfFolder(terminal.dataFolder) };
  const onProgress = progress.show.bind(progress);
  const planned = await planInThread({ map, plan: plan.value }, { onProgress, signal });
  progress.clear();
  if (signal.aborted) return EXIT_INTERRUPTED;
  if (!planned.ok) {
    const message = [planned.error.message, ...places.value.say].join(' ');
    if (planned.error.code !== 'no way') return refuse(message, terminal);
    terminal.complain(message);
    return 1;
  }
  const { report, gpx } = planned.value;
  const written = await writeDrive(read.value.gpxPath, gpx, signal);
  if (!written.ok) return refuse(written.error.message, terminal);
  terminal.out(read.value.json ? jsonText(report) : printReport(report, terminal.width, terminal.paint));
  return 0;
}

async function planOf(
  asked: PlanArguments,
  { places, say }: PlacesNamed,
  { now, dataFolder }: Terminal,
): Promise<Result<PlanOnAnyMap>> {
  const folder = asked.yardFolder;
  const named = await namedVehicle(asked.vehicle, () =>
    libraryNamed({ dataFolder, ...given({ folder }) }, now),
  );
  if (!named.ok) return named;
  const { card } = named.value;
  const list = asked.loadPath === undefined ? undefined : await readLoadFile(asked.loadPath);
  if (list?.ok === false) return list;
  const load = list && loadResult(card, list.value.items);
  if (load?.ok === false) return load;
  const yard = yardNamed(asked, dataFolder);
  const noted = yard === undefined ? undefined : await readYardNotes(yard, now);
  if (noted?.ok === false) return noted;
  const { prefer, leaveAt, country } = asked;
  return ok({
    places,
    card,
    name: basename(asked.gpxPath).replace(/\.gpx$/i, ''),
    program: PROGRAM,
    made: now().toISOString(),
    notes: [...say, ...(noted?.value.say ?? [])],
    ...given({ localNotes: noted?.value.localNotes }),
    ...given({ load: load?.value, prefer, country, leave: leaveAt }),
  });
}

/** Names are only looked up where one is given. */
async function placesOf(
  { places, mapPaths }: PlanArguments,
  dataFolder: string,
): Promise<Result<PlacesNamed>> {
  const known = places.filter((place) => typeof place !== 'string');
  if (known.length === places.length) return ok({ places: known, say: [] });
  const { placesNamed } = await import('./named-places.ts');
  return placesNamed(places, { mapPaths, shelf: shelfFolder(dataFolder) });
}

async function writeDrive(path: string, gpx: string, signal: AbortSignal): Promise<Result<unknown>> {
  const name = basename(path);
  if (name === '')
    return fail('usage', `--gpx ${clip(path)} names no file. Name the one to write, such as coast.gpx.`);
  return writeNew(dirname(path), { [name]: gpx }, signal);
}

import { given } from '../../../geo/given.ts';
import { ok, type Result } from '../../../geo/result.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { writeNew } from '../../services/files/write-new.ts';
import { isName, type TypedVehicle } from '../../services/library/typed-vehicle.ts';
import { shelfFolder } from '../../services/shelf/where-shelf.ts';
import { readCheckArguments, yardNamed } from '../arguments.ts';
import { jsonText } from '../json-text.ts';
import { exitFor, printReport } from '../print-report.ts';
import { EXIT_INTERRUPTED, refuse, type Terminal } from '../terminal.ts';
import { checkInThread } from './check-thread.ts';

/** `lanegauge check`. @returns 0 nothing barred or over a plate, 1 something is, 2 input could not be used, 130 interrupted */
export async function checkCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  const read = readCheckArguments(words, terminal.folder);
  if (!read.ok) return refuse(read.error.message, terminal);
  const { json, outFolder, yardFolder, noNotes, vehicle, ...asked } = read.value;
  const { dataFolder } = terminal;
  const card = vehicle && isName(vehicle) ? await cardNamed(vehicle, yardFolder, terminal) : undefined;
  if (card?.ok === false) return refuse(card.error.message, terminal);
  const yard = yardNamed({ noNotes, ...given({ yardFolder }) }, dataFolder);
  const request = {
    ...asked,
    ...given({ vehiclePath: vehicle?.path, card: card?.value, yard }),
    shelf: shelfFolder(dataFolder),
  };
  const { progress, signal } = terminal;
  const done = await checkInThread(
    { request, files: outFolder === undefined ? 'none' : 'report' },
    { onProgress: (what, share) => progress.show(what, share), signal },
  );
  progress.clear();
  if (signal.aborted) return EXIT_INTERRUPTED;
  if (!done.ok) return refuse(done.error.message, terminal);
  const { report, files } = done.value;
  if (outFolder !== undefined) {
    const written = await writeNew(outFolder, files, signal);
    if (signal.aborted) return EXIT_INTERRUPTED;
    if (!written.ok) return refuse(written.error.message, terminal);
  }
  terminal.out(json ? jsonText(report) : printReport(report, terminal.width, terminal.paint));
  return exitFor(report);
}

/** The library is only looked into where no card's file was named. */
async function cardNamed(
  vehicle: TypedVehicle,
  folder: string | undefined,
  { dataFolder, now }: Terminal,
): Promise<Result<VehicleCard>> {
  const { libraryNamed, namedVehicle } = await import('../../services/library/named-vehicle.ts');
  const found = await namedVehicle(vehicle, () => libraryNamed({ dataFolder, ...given({ folder }) }, now));
  return found.ok ? ok(found.value.card) : found;
}

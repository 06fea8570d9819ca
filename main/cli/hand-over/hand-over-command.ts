import { existsSync } from 'node:fs';
import { given } from '../../../geo/given.ts';
import { LEVEL_WORD } from '../../../geo/report/level.ts';
import { sayVerdict } from '../../../geo/report/say-verdict.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { listed, quote } from '../../../geo/units/text.ts';
import { GPX_MAX_BYTES } from '../../contract/limits.ts';
import { readBytes } from '../../services/files/read-bytes.ts';
import { findBrowser } from '../../services/hand-over/find-browser.ts';
import { printPdf } from '../../services/hand-over/print-pdf.ts';
import { writeHandOver } from '../../services/hand-over/write-hand-over.ts';
import { keepHanded } from '../../services/handed/handed-sheets.ts';
import { type KnownOf, knownOf } from '../../services/handed/known-of.ts';
import { sha256Of } from '../../services/library/known-records.ts';
import type { Library } from '../../services/library/library.ts';
import { openLibraryPlace } from '../../services/library/library-place.ts';
import { openLibrary } from '../../services/library/open-library.ts';
import { openSettings } from '../../services/settings/settings-store.ts';
import { shelfFolder } from '../../services/shelf/where-shelf.ts';
import { readVehicleFile } from '../../services/vehicle/read-vehicle-file.ts';
import { yardNamed } from '../arguments.ts';
import { checkInThread } from '../check-thread.ts';
import type { CheckDone, CheckWork } from '../check-work.ts';
import { jsonText } from '../json-text.ts';
import { EXIT_INTERRUPTED, refuse, type Terminal } from '../terminal.ts';
import { wrap } from '../wrap.ts';
import { fromLibrary } from './from-library.ts';
import { readHandOverArguments } from './hand-over-arguments.ts';

/** `lanegauge hand-over`. @returns 0 nothing barred, 1 something barred, 2 input could not be used, 130 interrupted */
export async function handOverCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  const read = readHandOverArguments(words, terminal.folder);
  if (!read.ok) return refuse(read.error.message, terminal);
  const { json, outFolder, pdf } = read.value;
  const { progress, signal } = terminal;
  const library = await openNamed(read.value.yardFolder, terminal);
  if (!library.ok) return refuse(library.error.message, terminal);
  const work = await workOf(read.value, library.value, terminal);
  if (!work.ok) return refuse(work.error.message, terminal);
  const done = await checkInThread(work.value, {
    onProgress: (what, share) => progress.show(what, share),
    signal,
  });
  if (!done.ok || signal.aborted) {
    progress.clear();
    return signal.aborted || done.ok ? EXIT_INTERRUPTED : refuse(done.error.message, terminal);
  }
  const { report, files, handedOver } = done.value;
  if (handedOver === undefined) throw new Error('a handing-over came without what it is made of');
  if (pdf) progress.show('printing the sheet');
  const printed = pdf ? await printPdf(handedOver.toPrint, findBrowser(), { signal }) : undefined;
  progress.clear();
  if (signal.aborted) return EXIT_INTERRUPTED;
  const all = printed?.ok === true ? { ...files, 'sheet.pdf': printed.value } : files;
  const written = await writeHandOver(outFolder, all, { route: handedOver.route, signal });
  if (signal.aborted) return EXIT_INTERRUPTED;
  if (!written.ok) return refuse(written.error.message, terminal);
  const { number, facts } = handedOver;
  const kept = await keepHanded(library.value, { number, facts, files: all });
  if (!kept.ok)
    terminal.complain(
      `Sheet ${number} is written, but not kept in the library: ${kept.error.message} Keep its folder.`,
    );
  if (printed?.ok === false) terminal.complain(printed.error.message);
  const said = { number, replaces: facts.replaces, folder: outFolder, names: written.value };
  terminal.out(json ? jsonText(report) : sayHandedOver(done.value, said, terminal.width));
  return report.verdict === 'barred' ? 1 : 0;
}

/** The library that it is kept in: the one named, else this computer's. */
async function openNamed(named: string | undefined, { dataFolder, now }: Terminal): Promise<Result<Library>> {
  if (named !== undefined && !existsSync(named))
    return fail(
      'yard.none',
      `--yard ${quote(named, 200)}: there is no such folder. Name the folder of the library, or leave it out for the one on this computer.`,
    );
  const folder = named ?? (await openLibraryPlace(dataFolder, now)).folder();
  return ok(await openLibrary({ folder, dataFolder, now }));
}

type Asked = Extract<ReturnType<typeof readHandOverArguments>, { ok: true }>['value'];

async function workOf(
  asked: Asked,
  library: Library,
  { dataFolder, now }: Terminal,
): Promise<Result<CheckWork>> {
  const { json: _, outFolder: __, pdf: ___, yardFolder, noNotes, fromLibrary: ids, ...files } = asked;
  const yard = yardNamed({ noNotes, ...given({ yardFolder }) }, dataFolder);
  const request = { ...files, shelf: shelfFolder(dataFolder), ...given({ yard }) };
  const own = (await openSettings(dataFolder, now)).current();
  if (ids === undefined) {
    const known = await knownOfFiles(library, files);
    return ok({ request, files: 'hand over', own, ...given({ known }) });
  }
  const taken = fromLibrary(library, ids);
  if (!taken.ok) return taken;
  // a leave time that is typed goes before the one kept
  const whole = {
    ...request,
    ...taken.value.request,
    ...given({ leaveAt: files.leaveAt ?? taken.value.request.leaveAt }),
  };
  const gpx = await gpxOf(whole.routePath);
  return ok({
    request: whole,
    files: 'hand over',
    own,
    ...given({ known: gpx === undefined ? undefined : knownOf(library, gpx, taken.value.vehicleId) }),
  });
}

/** What cannot be read is told by the check. */
async function knownOfFiles(
  library: Library,
  { routePath, vehiclePath }: { readonly routePath: string; readonly vehiclePath?: string },
): Promise<KnownOf | undefined> {
  const gpx = await gpxOf(routePath);
  const card = vehiclePath === undefined ? undefined : await readVehicleFile(vehiclePath);
  return gpx === undefined ? undefined : knownOf(library, gpx, card?.ok ? card.value : undefined);
}

async function gpxOf(path: string): Promise<string | undefined> {
  const bytes = await readBytes(path, 'drive', GPX_MAX_BYTES);
  return bytes.ok ? sha256Of(bytes.value) : undefined;
}

function sayHandedOver(
  { report }: CheckDone,
  {
    number,
    replaces,
    folder,
    names,
  }: {
    readonly number: string;
    readonly replaces: string | undefined;
    readonly folder: string;
    readonly names: readonly string[];
  },
  width: number,
): string {
  const lines = [
    `${LEVEL_WORD[report.verdict].toUpperCase()}: ${sayVerdict(report)}`,
    `Sheet ${number}, in ${folder}: ${listed(names)}.`,
    ...(replaces === undefined ? [] : [`It takes the place of sheet ${replaces}.`]),
    ...report.cautions.slice(0, 1),
  ];
  return `${lines.flatMap((line) => wrap(line, width)).join('\n')}\n`;
}

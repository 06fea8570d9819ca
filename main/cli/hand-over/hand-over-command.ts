import { existsSync } from 'node:fs';
import { sayPast } from '../../../geo/clock/is-past.ts';
import { LEVEL_WORD } from '../../../geo/report/level.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { listed, quote } from '../../../geo/units/text.ts';
import { cardCautions, cardRemarks } from '../../../geo/vehicle/card-warnings.ts';
import { NO_TELEPHONE } from '../../contract/hand-over/no-firm.ts';
import { findBrowser } from '../../services/hand-over/find-browser.ts';
import { finishHandOver, type PrintSheet } from '../../services/hand-over/finish-hand-over.ts';
import { printPdf } from '../../services/hand-over/print-pdf.ts';
import { writeHandOver } from '../../services/hand-over/write-hand-over.ts';
import type { Library } from '../../services/library/library.ts';
import { openLibraryPlace } from '../../services/library/library-place.ts';
import { openLibrary } from '../../services/library/open-library.ts';
import { askedBy } from '../../services/yard/asked-by.ts';
import { takeCheck } from '../../services/yard/grid/take-check.ts';
import { gridOfLibrary } from '../../services/yard/yard-of.ts';
import { checkInThread } from '../check/check-thread.ts';
import type { CheckDone } from '../check/check-work.ts';
import { jsonText } from '../json-text.ts';
import { exitFor, sayOver, sayOverallHere } from '../print-report.ts';
import { EXIT_INTERRUPTED, refuse, type Terminal } from '../terminal.ts';
import { wrap } from '../wrap.ts';
import { askedOf } from './asked-of.ts';
import { readHandOverArguments } from './hand-over-arguments.ts';
import { handOverSeveral } from './hand-over-several.ts';

/** `lanegauge hand-over`. @returns 0 nothing barred or over a plate, 1 something is, 2 input could not be used, 130 interrupted */
export async function handOverCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  const read = readHandOverArguments(words, terminal.folder);
  if (!read.ok) return refuse(read.error.message, terminal);
  const { json, outFolder, pdf } = read.value;
  const { progress, signal } = terminal;
  const library = await openNamed(read.value.yardFolder, terminal);
  if (!library.ok) return refuse(library.error.message, terminal);
  const found = await askedOf(read.value, library.value, terminal);
  if (!found.ok) return refuse(found.error.message, terminal);
  if (found.value.own.firm.telephone === '') terminal.complain(`${NO_TELEPHONE} ${SET_IT}`);
  if (found.value.kind === 'several') {
    const { pairs, kind: _, ...asked } = found.value;
    const print = pdf ? printSheet : undefined;
    return handOverSeveral(pairs, { ...asked, library: library.value, outFolder, json, print }, terminal);
  }
  const done = await checkInThread(
    { ...found.value.work, files: 'hand over' },
    { onProgress: (what, share) => progress.show(what, share), signal },
  );
  if (!done.ok || signal.aborted) {
    progress.clear();
    return signal.aborted || done.ok ? EXIT_INTERRUPTED : refuse(done.error.message, terminal);
  }
  const { report, files, handedOver } = done.value;
  if (handedOver === undefined) throw new Error('a handing-over came without what it is made of');
  let names: readonly string[] = [];
  const finished = await finishHandOver(
    { ...handedOver, files },
    {
      library: library.value,
      signal,
      print: pdf ? printSheet : undefined,
      taken: async (made) => takeCheck(gridOfLibrary(await askedBy(library.value, terminal)), made),
      onProgress: (what) => progress.show(what),
      async write(all) {
        const written = await writeHandOver(outFolder, all, { route: handedOver.route, signal });
        if (written.ok) names = written.value;
        return written;
      },
    },
  );
  progress.clear();
  if (signal.aborted) return EXIT_INTERRUPTED;
  if (!finished.ok) return refuse(finished.error.message, terminal);
  for (const say of finished.value.say) terminal.complain(say);
  const { number, facts } = handedOver;
  const said = { number, replaces: facts.replaces, folder: outFolder, names };
  terminal.out(json ? jsonText(report) : sayHandedOver(done.value, said, terminal.width));
  return exitFor(report);
}

const SET_IT = 'Set it once with --phone NUMBER, and the heading with --firm TEXT.';

const printSheet: PrintSheet = (html, signal) => printPdf(html, findBrowser(), { signal });

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
  const over = sayOver(report);
  const lines = [
    `${LEVEL_WORD[report.verdict].toUpperCase()}: ${sayOverallHere(report)}`,
    ...(over === undefined ? [] : [over]),
    `Sheet ${number}, in ${folder}: ${listed(names)}.`,
    ...(replaces === undefined ? [] : [`It takes the place of sheet ${replaces}.`]),
    ...report.cautions.slice(0, 1),
    ...(report.timetable?.past && report.leaveAt !== undefined ? [sayPast(report.leaveAt)] : []),
    ...cardCautions(report.vehicle, 'metric'),
    ...cardRemarks(report.vehicle, 'metric'),
  ];
  return `${lines.flatMap((line) => wrap(line, width)).join('\n')}\n`;
}

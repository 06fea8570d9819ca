import { existsSync } from 'node:fs';
import { dayInWords, sayMoment } from '../../../geo/clock/print-dates.ts';
import { keptDay } from '../../../geo/day/kept-day.ts';
import { given } from '../../../geo/given.ts';
import { LEVEL_WORD } from '../../../geo/report/level.ts';
import { ok } from '../../../geo/result.ts';
import type { Units } from '../../../geo/units/in-units.ts';
import { printable, quote } from '../../../geo/units/text.ts';
import { saySince } from '../../../geo/yard/handed/say-since.ts';
import { sayStanding } from '../../../geo/yard/handed/standing.ts';
import { type OutRow, outSheets, sheetAgain, worseNow } from '../../services/handed/out-sheets.ts';
import type { Library } from '../../services/library/library.ts';
import { saySheetsGone } from '../../services/library/say-library.ts';
import { openSettings } from '../../services/settings/settings-store.ts';
import { jsonText } from '../json-text.ts';
import { readWords } from '../read-words.ts';
import type { Terminal } from '../terminal.ts';
import type { YardCommand } from './command.ts';

/** A sheet that is out, as it is told. */
interface Told extends ReturnType<typeof toldSheet> {
  /** what is new or worse, a sentence each; absent where nothing changed, it has left already, or could not be checked */
  readonly worse?: readonly string[];
  readonly problem?: string;
}

/** `yard out`: the sheets that are out, those changed since first and with what is new or worse, the coming leave days first. */
export const yardOut: YardCommand = async (words, terminal, library) => {
  const read = readWords(words, { once: [], flags: ['json'] });
  if (!read.ok) return read;
  const rows = await outSheets({ library, ...terminal });
  const isGone = !existsSync(library.folder);
  const out = rows.filter(({ standing }) => standing.kind !== 'back');
  const changed = out.filter(({ since }) => since.length > 0);
  const same = [
    ...out.filter(({ since }) => since.length === 0),
    ...rows.filter(({ standing }) => standing.kind === 'back'),
  ];
  const { units } = (await openSettings(terminal.dataFolder, terminal.now)).current();
  const told: Told[] = [];
  for (const [i, row] of changed.entries()) {
    if (terminal.signal.aborted) break;
    terminal.progress.show('checking what is out', i / changed.length);
    const worse = isGone ? {} : await worseOf(row, library, terminal, units);
    told.push({ ...toldSheet(row), ...worse });
  }
  terminal.progress.clear();
  const refused = told.flatMap(({ number, problem }) =>
    problem === undefined ? [] : [`Sheet ${number}: ${problem}`],
  );
  return ok({
    text: read.value.flag('json')
      ? jsonText({ sheets: [...told, ...same.map(toldSheet)] })
      : printOut(told, same.map(toldSheet)),
    ...(isGone && rows.length > 0
      ? { refused: [saySheetsGone(library.folder)] }
      : refused.length > 0 && { refused }),
  });
};

async function worseOf(
  row: OutRow,
  library: Library,
  terminal: Terminal,
  units: Units,
): Promise<Pick<Told, 'worse' | 'problem'>> {
  if (row.leaves === 'left') return {};
  const again = await sheetAgain(row.sheet, { library, ...terminal }, units);
  const checked = again.ok ? await worseNow(again.value, terminal) : again;
  return checked.ok ? { worse: checked.value } : { problem: checked.error.message };
}

/** A sheet that is out, in a line's figures. */
export function toldSheet({ sheet: { made, body }, since, leaves, standing, driveNow, overlap }: OutRow) {
  const { number, driveName, vehicleName, leaveAt, verdict, replaces, plan } = body;
  return {
    number,
    drive: driveName,
    vehicle: vehicleName,
    made,
    leaves,
    since: [...since],
    standing,
    overlap,
    ...given({ driveNow, leaveAt, homeBy: plan && keptDay(plan).day?.homeBy, verdict, replaces }),
  };
}

/** A sheet in a line of a terminal. */
export function lineOf(sheet: ReturnType<typeof toldSheet>): string {
  const { number, drive, driveNow, vehicle, made, leaves, leaveAt, homeBy, since, standing, verdict } = sheet;
  const renamed = driveNow === undefined ? '' : ` (now ${quote(driveNow, 100)})`;
  const word = verdict === undefined ? 'VERDICT NOT KEPT' : LEVEL_WORD[verdict].toUpperCase();
  const stands = sayStanding(standing);
  const parts = [
    `${word}: sheet ${number}: ${quote(drive, 100)}${renamed} with ${quote(vehicle, 60)}`,
    ...(stands === '' ? [] : [stands]),
    `handed out ${dayInWords(made.slice(0, 10))}`,
    leaveAt === undefined
      ? 'no leave time'
      : `${leaves === 'left' ? 'left' : 'leaves'} ${sayMoment(leaveAt)}`,
    ...(homeBy === undefined ? [] : [`due ${sayMoment(homeBy)}`]),
  ];
  return `${parts.join(', ')}${since.length === 0 ? '' : `; changed since: ${saySince(since)}`}`;
}

function printOut(changed: readonly Told[], same: readonly ReturnType<typeof toldSheet>[]): string {
  if (changed.length + same.length === 0) return 'No sheet is out.\n';
  const out = same.filter(({ standing }) => standing.kind !== 'back');
  const back = same.filter(({ standing }) => standing.kind === 'back');
  const lines = [
    ...(changed.length === 0
      ? ['Nothing that is out has changed since it was handed over.']
      : ['Out, changed since:']),
    ...changed.flatMap((sheet) => [`  ${lineOf(sheet)}`, ...worseLines(sheet).map((line) => `    ${line}`)]),
    ...(out.length === 0
      ? []
      : [
          'Out, as handed over:',
          ...out.flatMap((sheet) => [
            `  ${lineOf(sheet)}`,
            ...overlapLines(sheet).map((line) => `    ${line}`),
          ]),
        ]),
    ...(back.length === 0 ? [] : ['Back:', ...back.map((sheet) => `  ${lineOf(sheet)}`)]),
  ];
  return `${lines.join('\n')}\n`;
}

function overlapLines({ overlap }: ReturnType<typeof toldSheet>): readonly string[] {
  return overlap === '' ? [] : [overlap];
}

function worseLines({ worse, leaves, ...sheet }: Told): readonly string[] {
  const also = overlapLines({ leaves, ...sheet });
  if (worse === undefined)
    return [...also, ...(leaves === 'left' ? ['its leave day is past: it is not checked again'] : [])];
  return [...also, ...(worse.length === 0 ? ['nothing is new or worse'] : worse.map(printable))];
}

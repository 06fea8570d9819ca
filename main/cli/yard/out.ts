import { given } from '../../../geo/given.ts';
import { ok } from '../../../geo/result.ts';
import type { Units } from '../../../geo/units/in-units.ts';
import { printable, quote } from '../../../geo/units/text.ts';
import { saySince } from '../../../geo/yard/handed/say-since.ts';
import { type OutRow, outSheets, sheetAgain, worseNow } from '../../services/handed/out-sheets.ts';
import type { Library } from '../../services/library/library.ts';
import { openSettings } from '../../services/settings/settings-store.ts';
import { jsonText } from '../json-text.ts';
import { readWords } from '../read-words.ts';
import type { Terminal } from '../terminal.ts';
import type { YardCommand } from './command.ts';

/** A sheet whose check would say otherwise today, as it is told. */
interface Told extends ReturnType<typeof toldSheet> {
  /** what is new or worse, a sentence each; absent where it could not be checked again or has left already */
  readonly worse?: readonly string[];
  readonly problem?: string;
}

/** `yard out`: sheets that are out and changed since, with what is new or worse, the coming leave days first. */
export const yardOut: YardCommand = async (words, terminal, library) => {
  const read = readWords(words, { once: [], flags: ['json'] });
  if (!read.ok) return read;
  const rows = await outSheets({ library, ...terminal });
  const changed = rows.filter(({ since }) => since.length > 0);
  const { units } = (await openSettings(terminal.dataFolder, terminal.now)).current();
  const told: Told[] = [];
  for (const [i, row] of changed.entries()) {
    if (terminal.signal.aborted) break;
    terminal.progress.show('checking what is out', i / changed.length);
    told.push({ ...toldSheet(row), ...(await worseOf(row, library, terminal, units)) });
  }
  terminal.progress.clear();
  const refused = told.flatMap(({ number, problem }) =>
    problem === undefined ? [] : [`Sheet ${number}: ${problem}`],
  );
  return ok({
    text: read.value.flag('json') ? jsonText({ sheets: told }) : printOut(rows.length, told),
    ...(refused.length > 0 && { refused }),
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
export function toldSheet({ sheet: { made, body }, since, leaves }: OutRow) {
  const { number, driveName, vehicleName, leaveAt, verdict, replaces } = body;
  return {
    number,
    drive: driveName,
    vehicle: vehicleName,
    made,
    leaves,
    since: [...since],
    ...given({ leaveAt, verdict, replaces }),
  };
}

/** A sheet in a line of a terminal. */
export function lineOf({ number, drive, vehicle, leaveAt, since }: ReturnType<typeof toldSheet>): string {
  const leave = leaveAt === undefined ? '' : `, leaves ${leaveAt.replace('T', ' ')}`;
  const why = since.length === 0 ? '' : `; changed since: ${saySince(since)}`;
  return `sheet ${number}: ${quote(drive, 100)} with ${quote(vehicle, 60)}${leave}${why}`;
}

function printOut(out: number, told: readonly Told[]): string {
  if (told.length === 0)
    return out === 0 ? 'No sheet is out.\n' : 'Nothing that is out has changed since it was handed over.\n';
  const lines = told.flatMap((sheet) => [
    lineOf(sheet),
    ...(sheet.worse === undefined
      ? sheet.leaves === 'left'
        ? ['  its leave day is past']
        : []
      : sheet.worse.length === 0
        ? ['  nothing is new or worse']
        : sheet.worse.map((say) => `  ${printable(say)}`)),
  ]);
  return `${lines.join('\n')}\n`;
}

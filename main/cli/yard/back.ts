import { dayInWords } from '../../../geo/clock/print-dates.ts';
import { fail, ok } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import { tellBack } from '../../services/handed/back.ts';
import { findHanded } from '../../services/handed/handed-sheets.ts';
import { localDay } from '../../services/local-day.ts';
import { jsonText } from '../json-text.ts';
import { readWords, USAGE_HINT } from '../read-words.ts';
import type { YardCommand } from './command.ts';

/** `yard back NUMBER`: the vehicle of a sheet is back today; with `--undo` that was told by mistake. */
export const yardBack: YardCommand = async (words, terminal, library) => {
  const read = readWords(words, { once: [], flags: ['json', 'undo'], bare: 1 });
  if (!read.ok) return read;
  const { bare, flag } = read.value;
  const [typed] = bare;
  if (typed === undefined) return fail('usage', `yard back needs a sheet number. ${USAGE_HINT}`);
  const found = findHanded(library, typed);
  if (!found.ok) return found;
  const { number, driveName, vehicleName } = found.value.body;
  const on = flag('undo') ? undefined : localDay(terminal.now());
  const kept = await tellBack(library, number, on);
  if (!kept.ok) return kept;
  const pair = `Sheet ${number}, ${quote(driveName, 100)} with ${quote(vehicleName, 60)}`;
  return ok({
    text: flag('json')
      ? jsonText({ number, ...(on !== undefined && { back: on }) })
      : `${pair}: ${on === undefined ? 'out again' : `back, ${dayInWords(on)}`}.\n`,
  });
};

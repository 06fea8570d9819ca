import { given } from '../../geo/given.ts';
import { cureOverload } from '../../geo/load/cure/cure.ts';
import { loadResult } from '../../geo/load/load-result.ts';
import { type Moment, onTheWay, worstOnTheWay } from '../../geo/load/tanks/on-the-way.ts';
import { LOAD_MARGIN_KG } from '../../geo/load/weigh/load-level.ts';
import { fail, ok, type Result } from '../../geo/result.ts';
import { libraryNamed, namedVehicle } from '../services/library/named-vehicle.ts';
import { readLoadFile } from '../services/vehicle/read-load-file.ts';
import { jsonText } from './json-text.ts';
import { printLoad } from './print-load.ts';
import { pathFrom, readWords, USAGE_HINT } from './read-words.ts';
import { refuse, type Terminal } from './terminal.ts';

/** `lanegauge load`. @returns 0 within the plates, 1 over one of them, 2 input could not be used */
export async function loadCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  const done = await loadFromFiles(words, terminal);
  if (!done.ok) return refuse(done.error.message, terminal);
  terminal.out(done.value.text);
  return done.value.over ? 1 : 0;
}

async function loadFromFiles(
  words: readonly string[],
  { folder, dataFolder, now, width, paint }: Terminal,
): Promise<Result<{ readonly text: string; readonly over: boolean }>> {
  const read = readWords(words, { once: ['vehicle', 'load'], flags: ['json'] });
  if (!read.ok) return read;
  const [vehiclePath, loadPath] = [read.value.one('vehicle'), read.value.one('load')];
  const missing = [
    ...(vehiclePath ? [] : ['--vehicle FILE.json']),
    ...(loadPath ? [] : ['--load FILE.json']),
  ];
  if (!vehiclePath || !loadPath) return fail('usage', `Missing: ${missing.join(', ')}. ${USAGE_HINT}`);
  const typed = { typed: vehiclePath, path: pathFrom(folder, vehiclePath) };
  const named = await namedVehicle(typed, () => libraryNamed({ dataFolder }, now));
  if (!named.ok) return named;
  const { card } = named.value;
  const list = await readLoadFile(pathFrom(folder, loadPath));
  if (!list.ok) return list;
  const { items } = list.value;
  const result = loadResult(card, items);
  if (!result.ok) return result;
  const moments = onTheWay(card, items);
  const overAtOnce = result.value.over.length > 0;
  // full tanks that empty, and empty ones that fill, may put an axle over later
  const worst = overAtOnce ? undefined : worstOnTheWay(moments);
  const over = overAtOnce || worst !== undefined;
  if (read.value.flag('json'))
    return ok({ text: jsonText({ ...result.value, onTheWay: moments.map(inJson) }), over });
  const cures = cureOverload(card, worst?.items ?? items, { marginKg: LOAD_MARGIN_KG });
  if (!cures.ok) return cures;
  const page = { card, items, result: result.value, cures: cures.value, moments, ...given({ worst }) };
  return ok({ text: printLoad(page, { width, paint }), over });
}

function inJson({ kind, result: { grossKg, frontKg, rearKg, over } }: Moment) {
  return { when: kind, grossKg, frontKg, rearKg, over };
}

import { fail, ok, type Result } from '../../geo/result.ts';
import { measureSwing } from '../../geo/swing/measure/measure-swing.ts';
import { reportSwing } from '../../geo/swing/measure/swing-report.ts';
import { follow } from '../../geo/swing/motion/follow.ts';
import type { Guide } from '../../geo/swing/motion/guide-path.ts';
import { swingVehicleOf } from '../../geo/swing/swing-vehicle.ts';
import { libraryNamed, namedVehicle } from '../services/library/named-vehicle.ts';
import { readPathFile } from '../services/vehicle/read-path-file.ts';
import { jsonText } from './json-text.ts';
import { printSwing } from './print-swing.ts';
import { pathFrom, readWords, USAGE_HINT } from './read-words.ts';
import { refuse, type Terminal } from './terminal.ts';

const GUIDES: Readonly<Record<string, Guide>> = { front: 'front axle', rear: 'rear axle' };

/** `lanegauge swing`. @returns 0 done, 1 the path is tighter than full lock, 2 input could not be used */
export async function swingCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  const done = await swingFromFiles(words, terminal);
  if (!done.ok) return refuse(done.error.message, terminal);
  terminal.out(done.value.text);
  return done.value.tooTight ? 1 : 0;
}

async function swingFromFiles(
  words: readonly string[],
  { folder, dataFolder, now, width, paint }: Terminal,
): Promise<Result<{ readonly text: string; readonly tooTight: boolean }>> {
  const read = readWords(words, { once: ['vehicle', 'path', 'follow'], flags: ['json'] });
  if (!read.ok) return read;
  const { one, flag } = read.value;
  const [vehiclePath, pathPath, followed] = [one('vehicle'), one('path'), one('follow')];
  const missing = [
    ...(vehiclePath ? [] : ['--vehicle FILE.json']),
    ...(pathPath ? [] : ['--path FILE.json']),
    ...(followed ? [] : ['--follow front|rear']),
  ];
  if (!vehiclePath || !pathPath || !followed)
    return fail('usage', `Missing: ${missing.join(', ')}. ${USAGE_HINT}`);
  const guide = Object.hasOwn(GUIDES, followed) ? GUIDES[followed] : undefined;
  if (guide === undefined)
    return fail('usage', `--follow is front or rear, the axle that keeps to the path. ${USAGE_HINT}`);
  const typed = { typed: vehiclePath, path: pathFrom(folder, vehiclePath) };
  const named = await namedVehicle(typed, () => libraryNamed({ dataFolder }, now));
  if (!named.ok) return named;
  const path = await readPathFile(pathFrom(folder, pathPath));
  if (!path.ok) return path;

  const vehicle = swingVehicleOf(named.value.card);
  const motion = follow(vehicle, path.value, guide);
  if (!motion.ok) return motion;
  const measures = measureSwing(vehicle, motion.value, path.value, guide);
  const report = reportSwing(vehicle, measures);
  return ok({
    text: flag('json') ? jsonText(report) : printSwing({ vehicle, guide, measures, report }, width, paint),
    tooTight: report.tighterThanFullLock,
  });
}

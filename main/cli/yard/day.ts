import { sayMoment } from '../../../geo/clock/print-dates.ts';
import { STAY_MOST_MIN } from '../../../geo/day/bounds.ts';
import { keptDay } from '../../../geo/day/kept-day.ts';
import { type DayPlan, type DayStop, dayPlanSchema } from '../../../geo/day/plan.ts';
import { given } from '../../../geo/given.ts';
import { driveName } from '../../../geo/library/body/drive.ts';
import type { Item } from '../../../geo/library/item.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { counted, quote } from '../../../geo/units/text.ts';
import { findItem, refuseTwoVersions } from '../../services/library/find-item.ts';
import { localMinute } from '../../services/local-day.ts';
import { changeDrive } from '../../services/yard/change-drive.ts';
import { stopsBeside } from '../../services/yard/stops-beside.ts';
import { readWallTime } from '../arguments.ts';
import { jsonText } from '../json-text.ts';
import { readAt } from '../read-at.ts';
import { readWords, USAGE_HINT, type WordsRead } from '../read-words.ts';
import type { YardCommand } from './command.ts';
import { dayChecked } from './day-checked.ts';
import { printDay, printPlan } from './print-day.ts';

/**
 * `yard day ID`: the stops and the return hour kept with a drive, changed first where something is given. With a vehicle
 * the drive is checked on the shelf, and each stop tells when to leave it at the latest.
 */
export const yardDay: YardCommand = async (words, terminal, library) => {
  const read = readWords(words, {
    once: ['leave', 'home-by', 'vehicle-id'],
    several: ['stop', 'remove-stop'],
    signed: ['stop'],
    flags: ['clear', 'json'],
    bare: 1,
  });
  if (!read.ok) return read;
  const [typed] = read.value.bare;
  if (typed === undefined) return fail('usage', `yard day needs the id of a drive. ${USAGE_HINT}`);
  const found = findItem(library, 'drive', typed);
  if (!found.ok) return found;
  const single = refuseTwoVersions(found.value);
  if (!single.ok) return single;
  const wanted = changeOf(read.value, found.value);
  if (!wanted.ok) return wanted;
  if (wanted.value !== undefined) {
    const put = await changeDrive(library, found.value.id, wanted.value, found.value.heads);
    if (!put.ok) return put;
  }
  const drive = library.find('drive', found.value.id) ?? found.value;
  const body = drive.versions[0]?.body;
  if (body === undefined)
    return fail(
      'library.none',
      `There is no drive ${drive.id} any more. See 'lanegauge yard list' for what there is.`,
    );
  const vehicle = read.value.one('vehicle-id');
  const json = read.value.flag('json');
  if (vehicle === undefined) {
    const kept = keptOf(body.plan);
    if (!kept.ok) return kept;
    const told = given({ leaveAt: body.leaveAt, plan: kept.value });
    const beside = await stopsBeside({ library, drive: drive.id, stops: kept.value?.stops ?? [] }, terminal);
    return ok({
      text: json
        ? jsonText({ id: drive.id, ...told, ...(beside.length > 0 && { beside }) })
        : printPlan(driveName(body), { ...told, beside, now: localMinute(terminal.now()) }),
    });
  }
  const checked = await dayChecked({ library, drive, vehicle }, terminal);
  if (!checked.ok) return checked;
  const { day, verdict } = checked.value;
  return ok({
    text: json ? jsonText({ id: drive.id, verdict, day }) : printDay(driveName(body), checked.value),
  });
};

interface DayChange {
  readonly leaveAt?: string | null;
  readonly plan: DayPlan | null;
}

/** @returns undefined where nothing is to be changed */
function changeOf(read: WordsRead, { versions }: Item<'drive'>): Result<DayChange | undefined> {
  const leave = readWallTime(read.one('leave'), 'leave');
  if (leave?.ok === false) return leave;
  const home = readWallTime(read.one('home-by'), 'home-by');
  if (home?.ok === false) return home;
  const clears = read.flag('clear');
  const changes = read.all('stop').length + read.all('remove-stop').length;
  if (!clears && !leave && !home && changes === 0) return ok(undefined);
  const kept = clears ? ok(undefined) : keptOf(versions[0]?.body.plan);
  if (!kept.ok) return kept;
  const before = kept.value;
  const left = withoutStops(before?.stops ?? [], read.all('remove-stop'));
  if (!left.ok) return left;
  const stops: DayStop[] = [...left.value];
  for (const text of read.all('stop')) {
    const stop = readStop(text);
    if (!stop.ok) return stop;
    stops.push(stop.value);
  }
  const plan = { ...before, stops, ...given({ homeBy: home?.value ?? before?.homeBy }) };
  const leaveAt = leave?.value ?? (clears ? undefined : versions[0]?.body.leaveAt);
  if (plan.homeBy !== undefined && leaveAt !== undefined && plan.homeBy <= leaveAt)
    return fail(
      'usage',
      `The return hour (${sayMoment(plan.homeBy)}) lies before the leave time (${sayMoment(leaveAt)}): check the day. Give both as they should be with --leave and --home-by.`,
    );
  const isNone = stops.length === 0 && plan.homeBy === undefined && plan.before === undefined;
  return ok({
    plan: isNone ? null : plan,
    ...given({ leaveAt: leave?.value ?? (clears ? null : undefined) }),
  });
}

function keptOf(plan: Readonly<Record<string, unknown>> | undefined): Result<DayPlan | undefined> {
  if (plan === undefined) return ok(undefined);
  const kept = keptDay(plan);
  return kept.day === undefined
    ? fail('day.unread', `${kept.unread} With --clear it is begun anew.`)
    : ok(kept.day);
}

/** @param typed which are taken out: by their number in the list as it was, or by name */
function withoutStops(stops: readonly DayStop[], typed: readonly string[]): Result<readonly DayStop[]> {
  const out = new Set<DayStop>();
  for (const word of typed) {
    const called = stops.filter(({ name }) => name.toLowerCase() === word.trim().toLowerCase());
    const numbered = /^\d{1,3}$/.test(word.trim()) ? stops[Number(word) - 1] : undefined;
    const meant = numbered ?? (called.length === 1 ? called[0] : undefined);
    if (meant === undefined)
      return fail(
        'usage',
        `--remove-stop ${quote(word, 100)}: ${sayNotMeant(called.length, stops)} 'lanegauge yard day ID' numbers them.`,
      );
    out.add(meant);
  }
  return ok(stops.filter((stop) => !out.has(stop)));
}

function sayNotMeant(called: number, stops: readonly DayStop[]): string {
  if (called > 1) return `${called} stops are called so: give the number of the one that is meant.`;
  if (stops.length === 0) return 'no stop is kept with that drive.';
  return `there is no such stop; ${counted(stops.length, 'stop')} ${stops.length === 1 ? 'is' : 'are'} kept.`;
}

const STOP = /^([^,]+,[^,]+),\s*(\d{1,4})\s*(?:,(.*))?$/su;

/** `LAT,LON,MINUTES,NAME` */
function readStop(text: string): Result<DayStop> {
  const [, place = '', minutes = '', name = ''] = STOP.exec(text) ?? [];
  if (place === '')
    return fail(
      'usage',
      `--stop ${quote(text)} is not a stop such as 54.1,9.2,45,"The mill": latitude, longitude, minutes, name. ${USAGE_HINT}`,
    );
  const at = readAt(place, 'stop');
  if (!at.ok) return at;
  const stop = { ...at.value, stayMin: Number(minutes), name: name.trim() || 'Stop' };
  const read = dayPlanSchema.shape.stops.element.safeParse(stop);
  if (read.success) return ok(read.data);
  return fail(
    'usage',
    `--stop ${quote(text)}: the stay is 0 to ${STAY_MOST_MIN} minutes, the name up to 200 characters. ${USAGE_HINT}`,
  );
}

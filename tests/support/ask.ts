import type { Drive } from '../../geo/drive/drive.ts';
import { readLeaving } from '../../geo/drive/times/leaving.ts';
import { timetable } from '../../geo/drive/times/timetable.ts';
import type { LoadFigures } from '../../geo/load/weigh/figures.ts';
import type { Finding } from '../../geo/report/report.ts';
import type { Tags } from '../../geo/roads/roads.ts';
import { alongDrive } from '../../geo/rules/along.ts';
import { makeFindings } from '../../geo/rules/finding.ts';
import { DEFAULT_MARGINS, type SubjectRule } from '../../geo/rules/rule.ts';
import type { Units } from '../../geo/units/in-units.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import { envelopeOf } from '../../geo/vehicle/envelope.ts';
import { driveOn, type Step, type TestMap, testMap } from './drive-on.ts';

/** An invented coach-built motorhome: 3.05 m high (needs 3.10), 2.30 m body, 2.75 m mirrors, 7.0 m, 3.5 t. */
export const COACHBUILT: VehicleCard = {
  format: 'lanegauge.vehicle',
  version: 1,
  name: 'Test coach-built',
  heightM: 3.05,
  widthM: 2.3,
  widthMirrorsM: 2.75,
  widthMirrorsFoldedM: 2.4,
  lengthM: 7,
  wheelbaseM: 4,
  frontOverhangM: 0.95,
  rearOverhangM: 2.05,
  grossKg: 3500,
  axleKg: { front: 1850, rear: 2000 },
};

/** Where and when a test drive is driven; left out, nobody knows. */
export interface WhereWhen {
  /** country code; the test maps lie in Germany on the globe, which is not asked */
  readonly country?: string;
  /** 2027-06-16T09:00, a Wednesday, on the clock of the map's place */
  readonly leaveAt?: string;
  /** the vehicle as loaded */
  readonly load?: LoadFigures;
  /** what the sentences are in; metric where left out */
  readonly units?: Units;
}

/** What a subject says about a drive. */
export function ask(
  rule: SubjectRule,
  map: TestMap,
  drive: Drive,
  card: VehicleCard = COACHBUILT,
  { country, leaveAt, load, units = 'metric' }: WhereWhen = {},
): Finding[] {
  const { roads } = map;
  const leaving = leaveAt === undefined ? undefined : readLeaving(leaveAt, drive, roads);
  if (leaving?.ok === false) throw new Error(leaving.error.message);
  const input = {
    drive,
    roads,
    card,
    envelope: envelopeOf(card),
    load,
    margins: DEFAULT_MARGINS,
    units,
    country: country === undefined ? [] : [country],
    along: alongDrive(drive, roads, {
      countries: [{ fromM: 0, toM: drive.lengthM, country }],
      ...(leaving === undefined
        ? {}
        : { leaving: leaving.value, times: timetable(drive, roads, { vehicle: card }) }),
    }),
  };
  return makeFindings(input, rule(input));
}

/** What a subject says about one straight road with these tags, way 1, driven along its drawn order or against it. */
export function askRoad(
  rule: SubjectRule,
  tags: Tags,
  options: { readonly card?: VehicleCard; readonly backward?: boolean } & WhereWhen = {},
): Finding[] {
  const map = testMap([{ id: 1, nodes: ['0,0', '5,0'], tags: { highway: 'residential', ...tags } }]);
  return ask(rule, map, driveOn(map, [options.backward ? -1 : 1]), options.card, options);
}

/** What a subject says about a tagged node in the middle of a residential road. */
export function askNode(
  rule: SubjectRule,
  tags: Tags,
  options: { readonly card?: VehicleCard } & WhereWhen = {},
): Finding[] {
  const map = testMap([{ id: 1, nodes: ['0,0', '2,0', '5,0'], tags: { highway: 'residential' } }], {
    '2,0': tags,
  });
  return ask(rule, map, driveOn(map, [1]), options.card, options);
}

/** What a subject says about ways driven one after another. */
export function askDrive(
  rule: SubjectRule,
  map: TestMap,
  steps: readonly Step[],
  card: VehicleCard = COACHBUILT,
  whereWhen: WhereWhen = {},
): Finding[] {
  return ask(rule, map, driveOn(map, steps), card, whereWhen);
}

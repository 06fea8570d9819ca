import { numberedFindings } from '../report/numbered.ts';
import type { DriveReport, Finding } from '../report/report.ts';
import { type Cell, csvText } from '../units/csv.ts';
import { METRES_PER_MILE } from '../units/exact.ts';
import type { TurnOffTold } from './drive-gpx.ts';

/** What a row is made of. */
interface Row {
  readonly finding: Finding;
  /** undefined for a folded one, which has none */
  readonly number: number | undefined;
  readonly turnOff: TurnOffTold | undefined;
}

const COLUMNS: readonly (readonly [string, (row: Row) => Cell])[] = [
  ['number', ({ number }) => number],
  ['level', ({ finding }) => finding.level],
  ['subject', ({ finding }) => finding.subject],
  ['kind', ({ finding }) => finding.kind],
  ['folded', ({ finding }) => (finding.folded === true ? 'yes' : 'no')],
  ['from_km', ({ finding }) => round(finding.fromM / 1000)],
  ['to_km', ({ finding }) => round(finding.toM / 1000)],
  ['from_mi', ({ finding }) => round(finding.fromM / METRES_PER_MILE)],
  ['passes_at', ({ finding }) => finding.passesAt],
  ['road', ({ finding }) => finding.road],
  ['limit', ({ finding }) => finding.limit?.value],
  ['limit_unit', ({ finding }) => finding.limit?.unit],
  ['limit_as_mapped', ({ finding }) => finding.limit?.asMapped],
  ['vehicle', ({ finding }) => finding.vehicle?.value],
  ['vehicle_unit', ({ finding }) => finding.vehicle?.unit],
  ['vehicle_what', ({ finding }) => finding.vehicle?.what],
  ['spare', ({ finding }) => finding.spare && round(finding.spare)],
  ['wants', ({ finding }) => finding.wants],
  ['say', ({ finding }) => finding.say],
  ['advice', ({ finding }) => finding.advice],
  ['lat', ({ finding }) => degrees(finding.at.lat)],
  ['lon', ({ finding }) => degrees(finding.at.lon)],
  ['turn_off', ({ turnOff }) => turnOff?.say],
  ['turn_off_km', ({ turnOff }) => turnOff?.place && round(turnOff.place.atM / 1000)],
  ['turn_off_lat', ({ turnOff }) => turnOff?.place && degrees(turnOff.place.at.lat)],
  ['turn_off_lon', ({ turnOff }) => turnOff?.place && degrees(turnOff.place.at.lon)],
  ['osm', ({ finding }) => finding.osm.map(({ type, id }) => `${type}/${id}`).join(' ')],
  [
    'tags',
    ({ finding }) =>
      Object.entries(finding.tags)
        .map(([key, value]) => `${key}=${value}`)
        .join('; '),
  ],
  ['id', ({ finding }) => finding.id],
];

/** Thousandths, without the noise of binary fractions. */
function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}

/** Seven decimals, about a centimetre. */
function degrees(value: number): number {
  return Math.round(value * 1e7) / 1e7;
}

/**
 * The findings as CSV: one row of headings, one row a finding, folded ones too. Kilometres, miles, metres, kilograms.
 * @param turnOffs by finding id
 */
export function findingsCsv({ findings }: DriveReport, turnOffs: ReadonlyMap<string, TurnOffTold>): string {
  const numbers = new Map(numberedFindings(findings).map(({ number, finding }) => [finding, number]));
  const rows = findings.map(
    (finding): Row => ({
      finding,
      number: numbers.get(finding),
      turnOff: turnOffs.get(finding.id),
    }),
  );
  return csvText([COLUMNS.map(([name]) => name), ...rows.map((row) => COLUMNS.map(([, cell]) => cell(row)))]);
}

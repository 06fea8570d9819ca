import { sayMoment } from '../../geo/clock/print-dates.ts';
import { clockText, durationText } from '../../geo/clock/print-times.ts';
import { sayOffMapTime, sayUntimed } from '../../geo/drive/times/off-map-time.ts';
import { sayBetterTimes } from '../../geo/leave/say-leave.ts';
import { append } from '../../geo/lists.ts';
import { saidByHeadline } from '../../geo/load/load-result.ts';
import { LOAD_MARGIN_KG } from '../../geo/load/weigh/load-level.ts';
import { headlineOf } from '../../geo/load/weigh/say-plates.ts';
import { isSettled, saySettledCount } from '../../geo/report/is-settled.ts';
import { LEVEL_WORD, LEVELS } from '../../geo/report/level.ts';
import { sayMapAge } from '../../geo/report/map-age.ts';
import { nameSubject } from '../../geo/report/name-place.ts';
import { numberedFindings } from '../../geo/report/numbered.ts';
import type { DriveReport, Finding } from '../../geo/report/report.ts';
import { foldedPlaces, sayFolded } from '../../geo/report/say-slight.ts';
import { liesElsewhere, sayOverall } from '../../geo/report/say-verdict.ts';
import { placesAt } from '../../geo/report/verdict.ts';
import { METRES_PER_MILE } from '../../geo/units/exact.ts';
import { printKg, printMetres } from '../../geo/units/print.ts';
import { clip, counted } from '../../geo/units/text.ts';
import { cardRemarks } from '../../geo/vehicle/card-warnings.ts';
import { HEIGHT_ALLOWANCE_M } from '../../geo/vehicle/envelope.ts';
import type { Paint } from './paint.ts';
import { wayLines } from './print-ways.ts';
import { wrap } from './wrap.ts';

/** The report as a page of text: verdict first, findings in driving order, cautions last. */
export function printReport(report: DriveReport, width: number, paint: Paint): string {
  const { route, vehicle, map } = report;
  const numbered = numberedFindings(report.findings);
  const shown = numbered.map(({ finding }) => finding);
  const lines = [
    ...wrapPainted(
      `${LEVEL_WORD[report.verdict].toUpperCase()}: ${sayOverallHere(report)}${counts(report.findings)}`,
      width,
      (text) => paint.level(report.verdict, text),
    ),
    ...wrap((report.verdict !== 'clear' && sayFolded(report.findings)) || '', width),
    ...overLines(report, width, paint),
    '',
    ...wrap(`Drive    ${clip(route.name || route.file)}, ${along(route.lengthM)}`, width),
    ...wrap(
      `Vehicle  ${clip(vehicle.name)}: height ${printMetres(vehicle.heightM)}, body ${printMetres(vehicle.widthM)}, over mirrors ${printMetres(vehicle.widthMirrorsM)}, length ${printMetres(overall(vehicle))}, plated ${printKg(vehicle.grossKg)}`,
      width,
    ),
    ...loadLines(report, width),
    ...wrap(`Map      ${sayMap(map)}`, width),
    ...ageLines(report, width),
    ...matchLines(report, width),
    ...timeLines(report, width),
    '',
  ];
  const folded = foldedLines(report.findings, width);
  if (shown.length + folded.length === 0) lines.push('No findings to show.', '');
  for (const { finding, number } of numbered)
    append(lines, [...findingLines(finding, number, report.timetable?.leaveAt, width, paint), '']);
  append(lines, settledLines(report.findings, width));
  append(lines, folded);
  append(lines, wayLines(report, width));
  append(lines, ruleLines(report, width));
  for (const caution of cautionsLeft(report)) append(lines, wrap(clip(caution, 2000), width));
  const doubts = cardRemarks(vehicle, 'metric');
  if (doubts.length > 0) lines.push('', 'Check these on the vehicle card:');
  for (const doubt of doubts) append(lines, wrap(doubt, width, '  '));
  return `${lines.join('\n')}\n`;
}

/** What is told beside the verdict; that the load is over stands under it already. */
function cautionsLeft({ cautions, load }: DriveReport): readonly string[] {
  const told = load === undefined ? [] : saidByHeadline(load);
  return cautions.filter((caution) => !told.includes(caution));
}

/** Folded places that may stop the vehicle, each road in a line; those that only ask for care are told to be elsewhere. */
function foldedLines(findings: readonly Finding[], width: number): string[] {
  const lines = foldedPlaces(findings, 'both').flatMap(({ what, places }) => [
    ...wrap(`${what}:`, width),
    ...places.flatMap((place) => wrap(place, width, '  ')),
  ]);
  if (findings.some(({ folded, level, note }) => folded === true && level === 'care' && note === undefined))
    append(lines, wrap('Other minor places are counted at the top; --json lists them.', width));
  return lines.length === 0 ? [] : [...lines, ''];
}

/** Of the shelf only the maps that hold something near the drive are named: there may be none. */
function sayMap({ sources, roads }: DriveReport['map']): string {
  if (sources.length === 0) return 'none: nothing on the shelf lies near this drive';
  const named = sources.map(({ name, dataDate }) =>
    dataDate ? `${clip(name)} (data of ${clip(dataDate.slice(0, 10))})` : clip(name),
  );
  return `${named.join(', ')}, ${counted(roads, 'road')} within reach`;
}

/** What the age of the map's data means, where it means something. */
function ageLines({ map, made }: DriveReport, width: number): string[] {
  if (map.sources.length === 0) return [];
  const { say, doubtful } = sayMapAge(map.sources, made);
  return doubtful ? wrap(say, width, '         ') : [];
}

/** "12.3 km / 7.6 mi" */
function along(lengthM: number): string {
  return `${(lengthM / 1000).toFixed(lengthM < 100_000 ? 2 : 1)} km / ${(lengthM / METRES_PER_MILE).toFixed(lengthM < 100_000 ? 2 : 1)} mi`;
}

function overall(vehicle: DriveReport['vehicle']): number {
  return vehicle.lengthM + (vehicle.rack?.fitted ? vehicle.rack.lengthM : 0);
}

function counts(findings: readonly Finding[]): string {
  const parts = LEVELS.map((level) => ({ level, n: placesAt(findings, level) }))
    .filter(({ n }) => n > 0)
    .map(({ level, n }) => `${n} ${LEVEL_WORD[level].toLowerCase()}`);
  const settled = saySettledCount(findings.filter(isSettled).length);
  if (settled !== '') parts.push(settled);
  return parts.length > 0 ? ` ${parts.join(', ')}.` : '';
}

function overLines(report: DriveReport, width: number, paint: Paint): string[] {
  const over = sayOver(report);
  return over === undefined ? [] : wrapPainted(over, width, (text) => paint.level('barred', text));
}

/** "Load     as listed 3526 kg of 3500 kg, front 1719 kg of 1850 kg, rear 1808 kg of 2000 kg" */
function loadLines({ load }: DriveReport, width: number): string[] {
  if (load === undefined) return [];
  const { grossKg, frontKg, rearKg, plates } = load;
  const of = (actualKg: number, plateKg: number) => `${printKg(actualKg, 'up')} of ${printKg(plateKg)}`;
  const figures = `${of(grossKg, plates.grossKg)}, front ${of(frontKg, plates.frontKg)}, rear ${of(rearKg, plates.rearKg)}`;
  return wrap(`Load     as listed ${figures}`, width);
}

function matchLines(report: DriveReport, width: number): string[] {
  const { offMapM, guessedM } = report.match;
  const parts = [
    ...(offMapM >= 1 ? [`${along(offMapM)} of it has no mapped road under it`] : []),
    ...(guessedM >= 1 ? [`${along(guessedM)} is guessed between sparse route points`] : []),
  ];
  return parts.length > 0 ? wrap(`Match    ${parts.join('; ')}`, width) : [];
}

/** "Leave    Saturday 12 June 2027, 09:30, arrive 11:02 (1 h 32 min driving)" */
function timeLines(report: DriveReport, width: number): string[] {
  const { timetable } = report;
  if (timetable === undefined) return [];
  if (liesElsewhere(report.match, report.route.lengthM))
    return ['Time     unknown: the map has no roads under this drive'];
  const { leaveAt, arriveAt, drivingS, notes } = timetable;
  const untimed = sayUntimed(report, 'both');
  const driving = untimed === undefined ? `${durationText(drivingS)} driving` : `time unknown: ${untimed}`;
  const off = sayOffMapTime(report, 'both');
  const told = off === undefined ? driving : `${driving}, ${off}`;
  const arrives = arriveAt === undefined ? '' : `, arrive ${clockText(arriveAt, leaveAt)}`;
  const line =
    leaveAt === undefined
      ? `Time     ${told}; no leave time is given, so limits by the hour are not settled`
      : `Leave    ${sayMoment(leaveAt)}${arrives} (${told})`;
  const better = leaveAt === undefined ? undefined : sayBetterTimes(report);
  return [
    line,
    ...(better === undefined ? [] : [`         ${better}`]),
    ...notes.map((note) => `         ${note}`),
  ].flatMap((text) => {
    const indented = text.startsWith(' ');
    return wrap(clip(text.trim(), 1000), width, indented ? '         ' : '');
  });
}

/** The rows of the country table that this check used, each with its source. */
function ruleLines({ rules }: DriveReport, width: number): string[] {
  if (rules === undefined || rules.length === 0) return [];
  const lines = rules.map(
    ({ country, about, says, source }) => `${country ?? 'Country not known'}, ${about}: ${says} [${source}]`,
  );
  return [
    'Rules of the road used in this check, by country, with their sources:',
    ...lines.flatMap((line) => wrap(clip(line, 1000), width, '  ')),
    '',
  ];
}

function findingLines(
  finding: Finding,
  number: number,
  leaveAt: string | undefined,
  width: number,
  paint: Paint,
): string[] {
  const indent = '     ';
  const where =
    finding.toM - finding.fromM > 10
      ? `${along(finding.fromM)} to ${along(finding.toM)}`
      : along(finding.fromM);
  const time = finding.passesAt === undefined ? '' : `, passed ${clockText(finding.passesAt, leaveAt)}`;
  const road = finding.road === undefined ? '' : `  ${clip(finding.road)}`;
  return [
    `${String(number).padStart(3)}  ${paint.level(finding.level, LEVEL_WORD[finding.level].toUpperCase())} ${nameSubject(finding)}  at ${where}${time}${road}`,
    ...wrap(clip(finding.say, 1000), width, indent),
    ...sumLines(finding).flatMap((line) => wrap(line, width, indent)),
    ...(finding.advice === '' ? [] : wrap(`Do: ${clip(finding.advice, 1000)}`, width, indent)),
    ...wrap(osmLine(finding), width, indent),
  ];
}

/** Places that a figure of the firm's own settles: folded, but the firm is to see what it answers for. */
function settledLines(findings: readonly Finding[], width: number): string[] {
  const settled = findings.filter(isSettled);
  if (settled.length === 0) return [];
  const lines = settled.map((finding) => {
    const road = finding.road === undefined ? '' : `, ${clip(finding.road)}`;
    return `${along(finding.fromM)}${road}: ${nameSubject(finding)} ${clip(finding.limit?.asMapped ?? '')}`;
  });
  return [`${saySettledCount(settled.length)}:`, ...lines.flatMap((line) => wrap(line, width, '  ')), ''];
}

/** limit − vehicle = spare, the number that decides; rounded against the driver, so that the sum comes out */
function sumLines(finding: Finding): string[] {
  const { limit, vehicle, spare } = finding;
  if (!limit || !vehicle || spare === undefined) return [];
  const digits = limit.unit === 'm' ? 2 : 0;
  const down = (value: number): string => roundDown(value, digits).toFixed(digits);
  const allowance = finding.subject === 'height' ? ` − allowance ${HEIGHT_ALLOWANCE_M.toFixed(2)}` : '';
  const left = down(spare);
  const verdict = spare < 0 ? `${left.slice(1)} ${limit.unit} over` : `${left} ${limit.unit} spare`;
  return [
    `Limit ${down(limit.value)} − ${vehicle.what} ${vehicle.value.toFixed(digits)}${allowance} = ${left.replace('-', '−')} ${limit.unit}: ${verdict}`,
  ];
}

/** Below what the figure says, but for what binary arithmetic adds or takes. */
function roundDown(value: number, digits: number): number {
  const scale = 10 ** digits;
  return Math.floor(value * scale + 1e-6) / scale;
}

function osmLine(finding: Finding): string {
  const objects = finding.osm.slice(0, 4).map(({ type, id }) => `${type} ${id}`);
  if (finding.osm.length > 4) objects.push(`${finding.osm.length - 4} more`);
  const tags = Object.entries(finding.tags).map(([key, value]) => clip(`${key}=${value}`, 160));
  const parts = [
    ...(objects.length > 0 ? [`OSM ${objects.join(', ')}`] : []),
    ...(tags.length > 0 ? [`as mapped: ${tags.join(', ')}`] : []),
    `${finding.at.lat.toFixed(5)}, ${finding.at.lon.toFixed(5)}`,
    // what --past and --answers take
    ...(finding.level === 'care' ? [] : [`finding ${finding.id}`]),
  ];
  return parts.join('; ');
}

function wrapPainted(text: string, width: number, painted: (text: string) => string): string[] {
  return wrap(text, width).map(painted);
}

/** The verdict's sentence on a terminal; where no map is named and the shelf has none, how to get one. */
export function sayOverallHere(report: DriveReport): string {
  return liesElsewhere(report.match, report.route.lengthM) &&
    report.map.sources.length === 0 &&
    !report.match.swapped
    ? 'Nothing on the shelf has roads under this drive, so nothing on it is checked. Get its map with: lanegauge shelf fetch --route DRIVE.gpx --by region, or lanegauge shelf import MAP.osm.pbf.'
    : sayOverall(report, 'both');
}

/** `AS LOADED OVER BY 26 kg…`; undefined where it is not. An overload is no limit of the road's, so the verdict stays. */
export function sayOver({ load }: DriveReport): string | undefined {
  return load === undefined || load.over.length === 0
    ? undefined
    : `AS LOADED ${headlineOf(load, { doubtful: false, marginKg: LOAD_MARGIN_KG })}`;
}

/** 1 where something bars the drive or the vehicle is over a plate as loaded, else 0. */
export function exitFor({ verdict, load }: DriveReport): 0 | 1 {
  return verdict === 'barred' || (load !== undefined && load.over.length > 0) ? 1 : 0;
}

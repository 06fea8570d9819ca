/**
 * Crying wolf, measured: 50 random 20 km drives (4 km in the two cities) on each real extract with a 3.05 m high,
 * 2.32 m wide, 7.4 m long vehicle of 3.5 t. Prints how many barred and tight findings carry no tag that could bind
 * (must be none) and the median of unknown and care lines shown before folding (at most 6), beside the corners, of
 * which a drive shows its worst five at most; and how many of each level come on 20 km. `-v` lists the subjects.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { checkDrive } from '../../geo/check.ts';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import type { Finding } from '../../geo/report/report.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import { openMap } from '../../main/services/map/open-map.ts';
import { randomDrive, seeded, trackOf } from '../support/random-drives.ts';

const DRIVES = 50;
const CITY = /berlin|monaco/;
const MOST_LINES = 6;
const CARD: VehicleCard = {
  format: 'lanegauge.vehicle',
  version: 1,
  name: 'Coach-built for the bench',
  heightM: 3.05,
  widthM: 2.32,
  widthMirrorsM: 2.8,
  widthMirrorsFoldedM: 2.45,
  lengthM: 7.4,
  wheelbaseM: 4.035,
  frontOverhangM: 0.945,
  rearOverhangM: 2.42,
  grossKg: 3500,
  axleKg: { front: 1850, rear: 2000 },
};
/** What may bar or be tight: a limit, access, a barrier, a class of way, a turn restriction, a one-way; or, for tight, the ground and water as mapped. */
const BINDS =
  /^(max|width|est_width|access|vehicle|motor|motorcar|hgv|barrier|highway|restriction|oneway|junction|construction|foot|bicycle|bus|toll|ferry|route|surface|tracktype|smoothness|depth|ford)/;

const verbose = process.argv.includes('-v');
const data = process.env['LANEGAUGE_DATA'];
if (data)
  for (const file of readdirSync(join(data, 'maps')).filter((name) => name.endsWith('.osm.pbf')))
    await run(join(data, 'maps', file), file);
else console.log('LANEGAUGE_DATA is not set: no drives to make');

async function run(path: string, file: string): Promise<void> {
  const opened = await openMap([path], undefined);
  if (!opened.ok) throw new Error(opened.error.message);
  const roads = opened.value;
  const random = seeded(5);
  const lines: number[] = [];
  const corners: number[] = [];
  const subjects = new Map<string, number>();
  const byLevel = new Map<string, number>();
  let drivenM = 0;
  let hard = 0;
  let groundless = 0;
  while (lines.length < DRIVES) {
    const known = randomDrive(roads, CITY.test(file) ? 4000 : 20_000, random);
    if (known === undefined) continue;
    const route = trackOf(known);
    const { findings } = checkDrive({
      route,
      file,
      drive: followRoads(route, roads),
      roads,
      card: CARD,
      program: 'bench',
      made: '2027-01-01T00:00:00Z',
    });
    const shown = findings.filter((finding) => !finding.folded);
    drivenM += known.lengthM;
    for (const { level } of shown) byLevel.set(level, (byLevel.get(level) ?? 0) + 1);
    byLevel.set('folded', (byLevel.get('folded') ?? 0) + findings.length - shown.length);
    const lesser = shown.filter(({ level }) => level === 'unknown' || level === 'care');
    lines.push(lesser.filter(({ turn }) => turn === undefined).length);
    corners.push(lesser.filter(({ turn }) => turn !== undefined).length);
    for (const finding of findings.filter(({ level }) => level === 'barred' || level === 'tight')) {
      hard++;
      if (hasGround(finding)) continue;
      groundless++;
      console.log(`    without a binding tag: ${finding.id} ${finding.say}`);
    }
    for (const { level, subject } of shown) {
      const key = `${level} ${subject}`;
      subjects.set(key, (subjects.get(key) ?? 0) + 1);
    }
  }
  lines.sort((a, b) => a - b);
  corners.sort((a, b) => a - b);
  const median = lines[DRIVES / 2] ?? 0;
  console.log(
    `${file.padEnd(26)} barred and tight ${hard}, without a binding tag ${groundless}; unknown and care shown: ` +
      `median ${median} ${median <= MOST_LINES ? 'ok' : `MORE THAN ${MOST_LINES}`}, most ${lines.at(-1)}; corners median ${corners[DRIVES / 2]}, most ${corners.at(-1)}`,
  );
  const per20Km = ['barred', 'tight', 'unknown', 'care', 'folded'].map(
    (level) => `${level} ${((20_000 * (byLevel.get(level) ?? 0)) / drivenM).toFixed(1)}`,
  );
  console.log(`${' '.repeat(26)} per 20 km: ${per20Km.join(', ')}`);
  if (verbose)
    for (const [key, count] of [...subjects].sort((a, b) => b[1] - a[1])) console.log(`    ${count} ${key}`);
}

function hasGround(finding: Finding): boolean {
  return Object.keys(finding.tags).some((key) => BINDS.test(key));
}

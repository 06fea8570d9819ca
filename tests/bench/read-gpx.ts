/**
 * Reads every real GPX file in LANEGAUGE_DATA/gpx and compares what it holds with the table in its SOURCES.md (made by
 * an independent parser, expat); then times 10 MB and 50 MB against gpxparser alone on the same light document and
 * against a bare saxes pass.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SaxesParser } from 'saxes';
import { readGpx } from '../../geo/drive/gpx/read-gpx.ts';
import { LightDomBuilder } from '../../main/services/route/light-dom.ts';
import { readRouteFile } from '../../main/services/route/read-route-file.ts';

const data = process.env['LANEGAUGE_DATA'];
if (data) await compareRealFiles(join(data, 'gpx'));
else console.log('LANEGAUGE_DATA is not set: real files left out');
for (const megabytes of [10, 50]) await time(megabytes);

async function compareRealFiles(folder: string): Promise<void> {
  const table = readTable(readFileSync(join(folder, 'SOURCES.md'), 'utf8'));
  const files = readdirSync(folder).filter((name) => name.endsWith('.gpx'));
  let agreed = 0;
  for (const name of files) {
    const read = await readRouteFile(join(folder, name));
    const wrong = disagreement(table.get(name) ?? '', read);
    if (wrong === undefined) agreed++;
    else console.log(`  ${name}: table "${table.get(name)}", ${wrong}`);
  }
  console.log(`real files: ${agreed} of ${files.length} as in the table`);
}

function readTable(markdown: string): Map<string, string> {
  const rows = markdown.matchAll(/^\| (\S+\.gpx) \| \d+ \| (.*) \|$/gmu);
  return new Map(Array.from(rows, (row) => [row[1] ?? '', row[2] ?? '']));
}

/** What differs from a row such as `trk 6+2,3; rte 4 (+289 shape); wpt 1`, undefined when nothing does. */
function disagreement(row: string, read: Awaited<ReturnType<typeof readRouteFile>>): string | undefined {
  if (!read.ok) return refusalFits(row, read.error.code) ? undefined : `refused: ${read.error.message}`;
  const part = (key: string) => new RegExp(`${key} ([^;(]*)`, 'u').exec(row)?.[1]?.trim() ?? '';
  for (const [key, kind] of [
    ['trk', 'track'],
    ['rte', 'route'],
  ] as const) {
    const ours = read.value.routes
      .filter((route) => route.kind === kind)
      .map((route) => route.segments.map((segment) => segment.lat.length));
    const theirs = part(key) === '' ? [] : part(key).replace(' …', '').split(',');
    const cut = part(key).endsWith('…');
    if (cut ? ours.length <= theirs.length : ours.length !== theirs.length) return `${ours.length} ${kind}s`;
    const shapes = Number(/\(\+(\d+) shape\)/u.exec(row)?.[1] ?? 0);
    for (const [i, counts] of theirs.entries()) {
      const expected = counts
        .split('+')
        .map(Number)
        .filter((count) => count > 0);
      if (key === 'rte' && expected[0] !== undefined) expected[0] += shapes;
      if (expected.join('+') !== ours[i]?.join('+')) return `${kind} ${i + 1}: ${ours[i]?.join('+')}`;
    }
  }
  const waypoints = Number(part('wpt') || 0);
  return waypoints === read.value.waypoints ? undefined : `${read.value.waypoints} waypoints`;
}

/** A refusal is right where the table has no two positions in a row, bad points or bad XML. */
function refusalFits(row: string, code: string): boolean {
  if (row === 'not well-formed') return code === 'gpx.damaged' || code === 'gpx.notGpx';
  if (row.includes('bad points')) return code === 'gpx.position';
  const drives = row.split(';').filter((part) => /trk|rte/u.test(part));
  const counts = drives.flatMap((part) => part.match(/\d+/gu) ?? []).map(Number);
  return (
    counts.every((count) => count < 2) && /^gpx\.(?:tooShort|emptyTracks|onlyWaypoints|nothing)$/u.test(code)
  );
}

async function time(megabytes: number): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'read-gpx-'));
  const path = join(folder, 'long.gpx');
  writeFileSync(path, longDrive(megabytes * 1_000_000));
  const text = readFileSync(path, 'utf8');
  const whole = await seconds(() => readRouteFile(path));
  const strict = await seconds(() => readGpx(text));
  const bare = await seconds(() => bareSaxes(text));
  const alone = await seconds(() => gpxparserAlone(text));
  console.log(
    `${(statSync(path).size / 1e6).toFixed(0)} MB: file read ${whole.toFixed(2)} s, strict pass ${strict.toFixed(2)} s, ` +
      `gpxparser alone on the light document ${alone.toFixed(2)} s (whole/alone ${(whole / alone).toFixed(2)}), ` +
      `bare saxes ${bare.toFixed(2)} s (strict/bare ${(strict / bare).toFixed(1)})`,
  );
  rmSync(folder, { recursive: true });
}

function longDrive(bytes: number): string {
  const pieces = [
    '<?xml version="1.0"?>\n<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>\n',
  ];
  for (let i = 0, length = 0; length < bytes; i++) {
    const clock = `${String(Math.trunc(i / 60) % 60).padStart(2, '0')}:${String(i % 60).padStart(2, '0')}`;
    const piece = `<trkpt lat="${(40 + i * 1e-5).toFixed(7)}" lon="${(8 + i * 1e-5).toFixed(7)}"><ele>${i % 500}.0</ele><time>2026-05-01T10:${clock}Z</time></trkpt>\n`;
    pieces.push(piece);
    length += piece.length;
  }
  return `${pieces.join('')}</trkseg></trk></gpx>\n`;
}

async function seconds(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return (performance.now() - start) / 1000;
}

function bareSaxes(text: string): void {
  const parser = new SaxesParser();
  parser.on('opentag', () => undefined);
  parser.on('text', () => undefined);
  parser.write(text).close();
}

interface Gpxparser {
  calcElevation(): unknown;
  parse(text: string): void;
}

function gpxparserAlone(text: string): void {
  const Parser = createRequire(import.meta.url)('gpxparser') as new () => Gpxparser;
  const parser = new Parser();
  parser.calcElevation = () => undefined;
  Reflect.set(globalThis, 'window', {
    DOMParser: class {
      parseFromString(source: string) {
        const built = new LightDomBuilder();
        readGpx(source, built);
        return built.document;
      }
    },
  });
  parser.parse(text);
  Reflect.deleteProperty(globalThis, 'window');
}

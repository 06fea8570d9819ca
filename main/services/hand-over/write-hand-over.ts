import { randomUUID } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm, rmdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { readGpx } from '../../../geo/drive/gpx/read-gpx.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { given } from '../../../geo/given.ts';
import { driveReportSchema } from '../../../geo/report/report.ts';
import { fail, ok, type Problem, type Result } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import { makeFolders } from '../files/make-folders.ts';
import { codeOf, messageOf } from '../files/system-error.ts';

/** Names of everything that a handing-over may write. */
const OWN_NAMES: ReadonlySet<string> = new Set([
  'sheet.html',
  'sheet.pdf',
  'phone.html',
  'visor-card.html',
  'drive.gpx',
  'findings.geojson',
  'findings.csv',
  'report.json',
  'day.ics',
]);
/** What systems leave in folders by themselves. */
const LEFT_BY_SYSTEMS: ReadonlySet<string> = new Set(['.DS_Store', 'Thumbs.db', 'desktop.ini']);
const PASSING = '.handing-over-';
/** Before the names of what gives way, while it does. */
const EARLIER = 'earlier-';

/**
 * Writes a handing-over into a folder: all of it or nothing. A folder that holds anything else is left alone, but for an
 * earlier handing-over of the same drive, which gives way.
 */
export async function writeHandOver(
  folder: string,
  files: Readonly<Record<string, string | Uint8Array>>,
  { route, signal }: { readonly route: Pick<Route, 'segments'>; readonly signal?: AbortSignal },
): Promise<Result<string[]>> {
  const held = await readHeld(folder);
  if (!held.ok) return held;
  const refusal = await refuseHeld(folder, held.value ?? [], route);
  if (refusal !== undefined) return { ok: false, error: refusal };
  const passing = join(folder, `${PASSING}${randomUUID()}`);
  try {
    await makeFolders(folder);
    await mkdir(passing);
    for (const [name, content] of Object.entries(files))
      await writeFile(join(passing, name), content, { flag: 'wx', ...given({ signal }) });
    const earlier = (held.value ?? []).filter((name) => OWN_NAMES.has(name));
    await exchange(folder, passing, { earlier, later: Object.keys(files) });
    await rm(passing, { recursive: true, force: true }).catch(() => {});
    return ok(Object.keys(files));
  } catch (error) {
    const left = await readdir(passing).catch(() => []);
    if (left.some((name) => name.startsWith(EARLIER)))
      return fail(
        'unwritable',
        `${sayTrouble(folder, error)} What was there before lies in ${passing}: take it from there.`,
      );
    await rm(passing, { recursive: true, force: true }).catch(() => {});
    return fail('unwritable', sayTrouble(folder, error));
  } finally {
    // a folder that was made for nothing
    if (held.value === undefined) await rmdir(folder).catch(() => {});
  }
}

/** Whether a folder holds the drive is told by these: the last to go and the first to come. */
const TELLING = ['report.json', 'drive.gpx'];

/**
 * Has the files of an earlier check give way to those of a later one. Every earlier one goes before a later one comes:
 * wherever this ends, no sheet of one check lies beside a phone page of another. What fails is undone.
 */
async function exchange(
  folder: string,
  passing: string,
  { earlier, later }: { readonly earlier: readonly string[]; readonly later: readonly string[] },
): Promise<void> {
  const undo: (() => Promise<void>)[] = [];
  const move = async (from: string, to: string) => {
    await rename(from, to);
    undo.unshift(() => rename(to, from));
  };
  const rest = (names: readonly string[]) => names.filter((name) => !TELLING.includes(name));
  const telling = (names: readonly string[]) => names.filter((name) => TELLING.includes(name));
  try {
    for (const name of [...rest(earlier), ...telling(earlier)])
      await move(join(folder, name), join(passing, `${EARLIER}${name}`));
    for (const name of [...telling(later), ...rest(later)])
      await move(join(passing, name), join(folder, name));
  } catch (error) {
    for (const back of undo) await back().catch(() => {});
    throw error;
  }
}

/** The names in a folder; undefined where there is no folder yet. What an interrupted run left is no one's. */
async function readHeld(folder: string): Promise<Result<string[] | undefined>> {
  try {
    const names = await readdir(folder);
    return ok(names.filter((name) => !name.startsWith(PASSING) && !LEFT_BY_SYSTEMS.has(name)));
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return ok(undefined);
    if (codeOf(error) === 'ENOTDIR')
      return fail(
        'not a folder',
        `${folder} is a file, not a folder; nothing was written. Name another folder.`,
      );
    return fail('unwritable', sayTrouble(folder, error));
  }
}

/** Why a folder cannot take this handing-over; undefined where it can. */
async function refuseHeld(
  folder: string,
  names: readonly string[],
  route: Pick<Route, 'segments'>,
): Promise<Problem | undefined> {
  if (names.length === 0) return undefined;
  const strange = names.find((name) => !OWN_NAMES.has(name));
  const why =
    strange !== undefined
      ? `it holds other files, such as ${quote(strange)}`
      : (await holdsDrive(folder, route))
        ? undefined
        : 'what it holds is no earlier handing-over of this drive';
  if (why === undefined) return undefined;
  return {
    code: 'folder taken',
    message: `${folder} cannot be used: ${why}. Nothing was written. Name a new or empty folder.`,
  };
}

/** By what lies there: a report of ours, and a track with the same positions. */
async function holdsDrive(folder: string, route: Pick<Route, 'segments'>): Promise<boolean> {
  try {
    const report: unknown = JSON.parse(await readFile(join(folder, 'report.json'), 'utf8'));
    if (!driveReportSchema.safeParse(report).success) return false;
    const read = readGpx(await readFile(join(folder, 'drive.gpx'), 'utf8'));
    const there = read.ok ? read.value.routes[0] : undefined;
    return there !== undefined && positionsOf(there) === positionsOf(route);
  } catch {
    return false;
  }
}

/** As a GPX file holds them: seven decimals. */
function positionsOf({ segments }: Pick<Route, 'segments'>): string {
  return segments
    .map(({ lat, lon }) => Array.from(lat, (one, i) => `${one.toFixed(7)} ${lon[i]?.toFixed(7)}`).join(','))
    .join(';');
}

function sayTrouble(folder: string, error: unknown): string {
  if (codeOf(error) === 'ABORT_ERR') return 'Cancelled; nothing was written.';
  return `Nothing could be written to ${folder}: ${messageOf(error)}. Choose another folder.`;
}

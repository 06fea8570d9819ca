import { readdir, stat, unlink } from 'node:fs/promises';
import { isHeld } from './claim.ts';
import { discardFiles, pathsNamed } from './part-file.ts';

/** Fetching that was broken off is hardly gone on with after this; the file is another by then. */
const KEPT_MS = 14 * 86_400_000;

/** Takes away files that nobody has gone on fetching, or wanted when they were whole, for two weeks. */
export async function sweepRegionFiles(folder: string, nowMs: number): Promise<void> {
  const names = await readdir(folder).catch(() => []);
  const stems = names.flatMap((name) => /^(.+)\.(?:part|osm\.pbf|about|claim)$/u.exec(name)?.[1] ?? []);
  for (const stem of new Set(stems)) {
    const paths = pathsNamed(folder, stem);
    const found = await Promise.all(Object.values(paths).map((path) => stat(path).catch(() => undefined)));
    const isYoung = found.some((one) => one !== undefined && nowMs - one.mtimeMs < KEPT_MS);
    if (isYoung || (await isHeld(paths, nowMs))) continue;
    await discardFiles(paths);
    await unlink(paths.claim).catch(() => {});
  }
}

import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { readRegionIndex } from '../../../../geo/fetch/region/read-index.ts';
import type { RegionIndex } from '../../../../geo/fetch/region/region.ts';
import { makeFolders } from '../../files/make-folders.ts';
import { replaceFile } from '../../files/replace-file.ts';
import { refuseOthers } from './server-files.ts';

/** Outlines hardly change; a list as old as this is asked for anew. */
const KEPT_DAYS = 30;
const DAY_MS = 86_400_000;
const MARK = 'lanegauge.regions 1';

/** A list of regions kept on this computer. */
export interface KeptIndex {
  readonly index: RegionIndex;
  readonly fetchedMs: number;
}

/**
 * Keeps a server's list as it came, with the moment and a checksum in a line before it.
 * @throws what the system says
 */
export async function keepIndex(folder: string, server: URL, text: string, nowMs: number): Promise<void> {
  await makeFolders(folder);
  await replaceFile(pathOf(folder, server), `${MARK} ${nowMs} ${sumOf(text)}\n${text}`);
}

/** The kept list of a server; undefined where there is none, or it is old, damaged, or from a clock that went wrong. */
export async function readKeptIndex(
  folder: string,
  server: URL,
  nowMs: number,
): Promise<KeptIndex | undefined> {
  const kept = await readFile(pathOf(folder, server), 'utf8').catch(() => '');
  const end = kept.indexOf('\n');
  const [, time, sum] = /^lanegauge\.regions 1 (\d{1,15}) ([0-9a-f]{64})$/u.exec(kept.slice(0, end)) ?? [];
  const fetchedMs = Number(time);
  const text = kept.slice(end + 1);
  const isFresh = nowMs >= fetchedMs && nowMs - fetchedMs < KEPT_DAYS * DAY_MS;
  if (end < 0 || !isFresh || sumOf(text) !== sum) return undefined;
  const index = readRegionIndex(text, refuseOthers(server));
  return index.ok ? { index: index.value, fetchedMs } : undefined;
}

function pathOf(folder: string, server: URL): string {
  return join(folder, `regions-${sumOf(server.href).slice(0, 16)}.txt`);
}

function sumOf(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

import { fail, ok, type Result } from '../../../../geo/result.ts';
import { makeFolders } from '../../files/make-folders.ts';
import { messageOf } from '../../files/system-error.ts';
import { askChecksum, type Checksum } from './ask-checksum.ts';
import { claimPart } from './claim.ts';
import { loadPart } from './load-part.ts';
import type { MapAsk } from './map-ask.ts';
import { discardFiles, PartFile, type PartPaths, pathsOf } from './part-file.ts';

/** A map file that is here whole. */
export interface FetchedMap {
  /** an .osm.pbf */
  readonly path: string;
  readonly bytes: number;
  /** whether the server's checksum was held against it */
  readonly verified: boolean;
  /** sentences for the user */
  readonly notes: readonly string[];
  /** Takes the file away: to be called when it was read, or is not wanted. */
  discard(): Promise<void>;
}

/** A server that replaces a file while it is fetched does so once a day. */
const ROUNDS = 2;

/**
 * Fetches the map file of one region: first the checksum beside it, then the file, going on from what an earlier call
 * left where it is still the same. Nothing is handed over that is not whole.
 */
export async function fetchMap(ask: MapAsk, nowMs: number): Promise<Result<FetchedMap>> {
  const paths = pathsOf(ask.folder, ask.region);
  try {
    await makeFolders(ask.folder);
    const release = await claimPart(paths, nowMs);
    if (release === undefined)
      return fail(
        'map-busy',
        `Another Lanegauge is fetching the map of ${ask.region.name} now. Wait for it.`,
      );
    try {
      return await fetchClaimed(ask, paths);
    } finally {
      await release();
    }
  } catch (error) {
    if (ask.signal?.aborted) return fail('http.cancelled', 'Cancelled.');
    return fail(
      'map-unwritable',
      `The map of ${ask.region.name} could not be kept in ${ask.folder}: ${messageOf(error)}. Make room there, or see that it can be written to.`,
    );
  }
}

async function fetchClaimed(ask: MapAsk, paths: PartPaths): Promise<Result<FetchedMap>> {
  let replaced = false;
  for (let round = 0; round < ROUNDS; round++) {
    const checksum = await askChecksum(ask);
    if (!checksum.ok) return checksum;
    const fetched = await fetchOnce(ask, paths, checksum.value);
    if (fetched !== 'replaced')
      return fetched.ok && replaced ? ok(withNote(fetched.value, sayReplaced(ask))) : fetched;
    replaced = true;
  }
  return fail(
    'map-replaced',
    `${ask.server.host} replaced the map of ${ask.region.name} while it was being fetched, twice. Try again in an hour.`,
  );
}

async function fetchOnce(
  ask: MapAsk,
  paths: PartPaths,
  checksum: Checksum,
): Promise<Result<FetchedMap> | 'replaced'> {
  // without a checksum nothing would tell whether what was left by a power cut is sound
  if (checksum.kind === 'none') await discardFiles(paths);
  const part = await PartFile.open(paths, ask.region.url, ask.signal);
  const proved = checksum.kind === 'md5';
  const isHere = proved && part.bytes > 0 && part.md5() === checksum.md5;
  const loaded = isHere ? ok(undefined) : await loadPart(ask, part, proved);
  if (!loaded.ok) {
    await part.leave();
    return loaded;
  }
  const sound = checksum.kind === 'none' ? ok(undefined) : await verify(ask, part.md5(), checksum.md5);
  if (sound === 'replaced' || !sound.ok) {
    await part.discard();
    return sound;
  }
  const { bytes } = part;
  const path = await part.finish();
  return ok({
    path,
    bytes,
    verified: proved,
    notes: checksum.kind === 'none' ? [checksum.why] : [],
    discard: () => discardFiles(paths),
  });
}

/** Holds a file's sum against the server's; where they differ the server is asked whether it has another file by now. */
async function verify(ask: MapAsk, md5: string, asked: string): Promise<Result<undefined> | 'replaced'> {
  if (md5 === asked) return ok(undefined);
  const now = await askChecksum(ask);
  if (!now.ok) return now;
  if (now.value.kind === 'md5' && now.value.md5 === md5) return ok(undefined);
  if (now.value.kind === 'md5' && now.value.md5 !== asked) return 'replaced';
  return fail(
    'map-checksum',
    `The map of ${ask.region.name} is not what ${ask.server.host} says it is: its checksum is another. It was thrown away; try again later.`,
  );
}

function withNote(map: FetchedMap, note: string): FetchedMap {
  return { ...map, notes: [note, ...map.notes] };
}

function sayReplaced({ server, region }: MapAsk): string {
  return `${server.host} replaced the map of ${region.name} while it was being fetched; it was fetched anew.`;
}

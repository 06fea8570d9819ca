import { given } from '../../geo/given.ts';
import type { Problem } from '../../geo/result.ts';
import { clip, listed } from '../../geo/units/text.ts';
import { ask } from '../host/ask.ts';
import { leaveAt, report } from '../state/check.ts';
import { notice, type Told, tellAlso } from '../state/happening.ts';
import { openedDrive, openedMap } from '../state/opened.ts';
import { dialog } from '../state/page.ts';
import { mapsOnShelf } from '../state/shelf.ts';
import { cursorM, selectedId } from '../state/shown.ts';
import { leaveChanges } from './leave-changes.ts';
import { isOvertaken, type Job } from './long-work.ts';
import { type DriveWanted, isFile, type MapWanted, sameSource, type Wanted } from './wanted.ts';
import { isMostlyOff, mapForDrive, shelfAbout } from './which-map.ts';

let now: Wanted | undefined;

/** What is being opened. */
export const beingOpened = (): Wanted | undefined => now;

/** Opens what is wanted; until it is there, it is known what that is. */
export async function openIn(job: Job, wanted: Wanted): Promise<Problem | undefined> {
  now = wanted;
  try {
    return await openAll(job, wanted);
  } finally {
    if (now === wanted) now = undefined;
  }
}

/**
 * Opens a map, a drive, or a drive on a map; a drive alone on the map that serves it. What was open stays open where the
 * new cannot be read; a drive that stays is followed again on a new map.
 */
async function openAll(job: Job, wanted: Wanted): Promise<Problem | undefined> {
  const before = openedMap.peek();
  const kept = keptDrive();
  const map = wanted.map ?? mapForDrive(wanted.drive, { map: before, shelfMaps: mapsOnShelf.peek() });
  const unmapped = map && (await openMapFor(job, map, wanted.drive));
  if (unmapped) return unmapped;
  const drive = wanted.drive ?? (map ? kept : undefined);
  if (!drive) return undefined;
  const problem = await openDriveIn(job, drive);
  if (!problem) return wanted.map || !shelfServesBetter() ? undefined : openOnShelf(job, drive);
  if (!map || isOvertaken(job)) return problem;
  if (!kept || !wanted.drive) {
    forgetDrive();
    return problem;
  }
  if (map.about && before) await openMapIn(UNSTOPPED, before);
  await openDriveIn(UNSTOPPED, kept);
  return problem;
}

/** Opens a map for a drive; where it cannot be had, and that is said, the drive is opened on the next best. */
async function openMapFor(
  job: Job,
  map: MapWanted,
  drive: DriveWanted | undefined,
): Promise<Problem | undefined> {
  const problem = await openMapIn(job, map);
  if (!problem || !drive || job.signal.aborted) return problem;
  if (map.source.kind === 'shelf' && openedMap.peek()) {
    notice.value = {
      kind: 'error',
      say: `${problem.message} The drive is held against the open map instead.`,
      offers: [OFFER_SHELF],
    };
    return undefined;
  }
  if (map.ownOf === undefined) return problem;
  const onShelf = mapsOnShelf.peek() > 0 && !(await openMapIn(job, shelfAbout(drive.source)));
  if (!onShelf && !openedMap.peek()) return problem;
  notice.value = sayOtherMap(map.ownOf, { why: 'gone', instead: onShelf ? 'your shelf' : 'the open map' });
  return undefined;
}

/** A file stays the map until a drive lies mostly off it. */
function shelfServesBetter(): boolean {
  const followed = openedDrive.peek()?.followed;
  return (
    mapsOnShelf.peek() > 0 &&
    isFile(openedMap.peek()?.source) &&
    followed !== undefined &&
    isMostlyOff(followed)
  );
}

/** Where the shelf cannot be read the drive stays on the file. */
async function openOnShelf(job: Job, drive: DriveWanted): Promise<Problem | undefined> {
  const file = openedMap.peek()?.summary.name ?? '';
  const problem = await openMapIn(job, shelfAbout(drive.source));
  if (problem) return job.signal.aborted ? problem : undefined;
  tellAlso({
    kind: 'note',
    say: `Most of this drive lies off ${clip(file, 80)}: it is held against your shelf instead.`,
  });
  return openDriveIn(job, drive);
}

/** What helps where a map is missing. */
export const OFFER_MAP = {
  say: 'Open a map…',
  act: () => {
    dialog.value = 'open';
  },
};

const OFFER_SHELF = {
  say: 'Look at the shelf…',
  act: () => {
    dialog.value = 'shelf';
  },
};

/** A drive's own map is not at hand: the drive is held against another. */
export function sayOtherMap(
  name: string,
  { why, instead }: { why: 'gone' | 'not remembered'; instead: 'your shelf' | 'the open map' },
): Told {
  const so = why === 'gone' ? 'cannot be opened any more' : 'was too large to be kept';
  return {
    kind: 'note',
    say: `The map this drive was last held against, ${clip(name, 80)}, ${so}. The drive is held against ${instead} instead.`,
    offers: [OFFER_MAP],
  };
}

/** Opens a map by itself. */
export async function openMapIn(job: Job, { source, about }: MapWanted): Promise<Problem | undefined> {
  const only = given({ about });
  const reply = await ask('openMap', { source, ...only }, { signal: job.signal, onProgress: job.tell });
  if (!reply.ok) return reply.error;
  openedMap.value = { summary: reply.value, source, ...only };
  const damaged = reply.value.shelf?.damaged ?? [];
  if (damaged.length > 0)
    tellAlso({
      kind: 'error',
      say: `On your shelf ${listed(damaged.map((name) => clip(name, 60)))} ${damaged.length === 1 ? 'is' : 'are'} damaged: what cannot be read of it is unknown on this drive. It can be mended.`,
      offers: [OFFER_SHELF],
    });
  return undefined;
}

async function openDriveIn(job: Job, { source, track }: DriveWanted): Promise<Problem | undefined> {
  const reply = await ask(
    'openDrive',
    { source, ...given({ track }) },
    { signal: job.signal, onProgress: job.tell },
  );
  if (!reply.ok) return reply.error;
  if (job.signal.aborted) return { code: 'cancelled', message: 'Cancelled.' };
  const before = openedDrive.peek();
  const same = before && sameSource(before.source, source);
  if (!same) leaveChanges();
  if (!same && reply.value.leaveAt !== undefined) leaveAt.value = reply.value.leaveAt;
  openedDrive.value = { followed: reply.value, source };
  if (!same || before.followed.taken !== reply.value.taken) {
    report.value = undefined;
    selectedId.value = undefined;
    cursorM.value = 0;
  }
  return undefined;
}

function keptDrive(): DriveWanted | undefined {
  const kept = openedDrive.peek();
  return kept && { source: kept.source, track: kept.followed.taken };
}

function forgetDrive(): void {
  openedDrive.value = undefined;
  report.value = undefined;
  selectedId.value = undefined;
}

const UNSTOPPED: Job = { signal: new AbortController().signal, tell: () => {} };

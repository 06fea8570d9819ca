import { joinSpans, lengthOfSpans } from '../../../geo/fetch/line/spans.ts';
import { given } from '../../../geo/given.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { type Coverage, coverageOf } from '../../../geo/shelf/coverage.ts';
import { clip, counted } from '../../../geo/units/text.ts';
import type { Fetched, FetchPlan } from '../../contract/fetch.ts';
import { fetchLine } from '../fetch/line/fetch-line.ts';
import type { RunProgress } from '../fetch/line/line-run.ts';
import { MOST_TRIES } from '../fetch/line/manners.ts';
import { planLineFetch } from '../fetch/line/plan-line-fetch.ts';
import { openMap } from '../map/open-map.ts';
import type { ImportHooks } from '../shelf/put-on-shelf.ts';
import { importMap } from '../shelf/shelf-work.ts';
import type { DriveToFetch, FetchTools } from './wanted.ts';

/** Of the work, fetching; what is left is taking it in. */
const FETCHING_SHARE = 0.95;

/** What fetching along a drive would ask, of whom and how much. Sends nothing. */
export async function planLine(
  tools: FetchTools,
  { route }: DriveToFetch,
  server: string,
): Promise<Result<FetchPlan>> {
  const planned = await planLineFetch(route, { server, dataFolder: tools.dataFolder, pace: tools.pace });
  if (!planned.ok) return planned;
  const { host, questions, kept, estimate, askedToday, isShared, privacy, limits } = planned.value;
  return ok({
    by: 'line',
    host,
    queries: questions,
    bytes: estimate.packedBytes,
    seconds: estimate.seconds,
    say: [
      privacy,
      ...(kept > 0
        ? [`${counted(kept, 'answer')} of an earlier time ${kept === 1 ? 'is' : 'are'} here already.`]
        : []),
      ...(isShared ? [SHARED] : []),
      ...limits,
    ],
    today: { queries: askedToday.questions, bytes: askedToday.bytes },
  });
}

const SHARED =
  'This server is run for everybody, by volunteers: for many drives fetch the maps of whole regions, or name a server of your own in Settings.';

/** Asks what was agreed to, and puts what came on the shelf as one map named after the drive. */
export async function fetchLineToShelf(
  tools: FetchTools,
  { drive, server }: { readonly drive: DriveToFetch; readonly server: string },
  hooks: ImportHooks,
): Promise<Result<Fetched>> {
  const { dataFolder, pace } = tools;
  const planned = await planLineFetch(drive.route, { server, dataFolder, pace });
  if (!planned.ok) return planned;
  const { host } = planned.value;
  const fetched = await fetchLine(planned.value, {
    signal: hooks.signal,
    onProgress: (progress) =>
      hooks.onProgress({
        what: sayProgress(host, progress),
        share: progress.of === 0 ? FETCHING_SHARE : (FETCHING_SHARE * progress.done) / progress.of,
        ...given({ secondsLeft: progress.secondsLeft }),
      }),
  });
  if (!fetched.ok) return fetched;
  const { path, notHad, notes, forget } = fetched.value;
  const name = `Along ${clip(drive.name, 100)}`;
  const covered = await coveredBy(path, drive, hooks.signal);
  if (!covered.ok) return covered;
  const { bare, lengthM } = covered.value;
  if (lengthOfSpans(bare) >= lengthM - 1) {
    // the same answers would come to the same again
    await forget();
    return fail('line.no-road', sayNoRoad(host, notes));
  }
  const lacking = joinSpans([...notHad, ...bare]);
  const put = await importMap(
    tools,
    {
      name,
      // another drive of this name
      elsewhere: name,
      files: [{ path, name: `${host}, along the drive`, stays: false }],
      origin: { by: 'line', from: host, lacking, notes: [...notes] },
    },
    {
      signal: hooks.signal,
      onProgress: ({ share = 0, ...work }) =>
        hooks.onProgress({ ...work, share: FETCHING_SHARE + (1 - FETCHING_SHARE) * share }),
    },
  );
  if (!put.ok) return put;
  // what a later fetch would have to ask again stays where parts were not answered
  if (notHad.length === 0) await forget();
  return ok({ kind: 'maps', maps: [put.value.name], lacking, notes: [...notes] });
}

/** What is going on; where an answer failed, what came back and when it is asked again. */
function sayProgress(host: string, { done, of, tries, waiting }: RunProgress): string {
  const again = `${tries} of ${MOST_TRIES}`;
  if (waiting) return `${host} ${waiting.came}: asks again in ${waiting.seconds} s (${again})`;
  return `Fetching from ${host}, ${done} of ${of}${tries > 1 ? `, asked again (${again})` : ''}`;
}

/** How far the roads that came reach along the drive: a server may answer every question and know nothing of the place. */
async function coveredBy(
  path: string,
  { route }: DriveToFetch,
  signal: AbortSignal,
): Promise<Result<Coverage>> {
  const opened = await openMap([path], route, { signal });
  if (!opened.ok) return opened;
  const covered = coverageOf(route, opened.value);
  if (opened.value.ways.id.length > 0) return ok(covered);
  return ok({ ...covered, bare: [{ fromM: 0, toM: covered.lengthM }] });
}

function sayNoRoad(host: string, notes: readonly string[]): string {
  return [
    `Nothing that ${host} sent holds a road within reach of this drive, so it was not kept, and the shelf stays as it was.`,
    ...notes,
    'Use another server, or fetch by region.',
  ].join(' ');
}

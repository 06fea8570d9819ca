import { ok, type Result } from '../../../geo/result.ts';
import { clip, counted } from '../../../geo/units/text.ts';
import type { Fetched, FetchPlan } from '../../contract/fetch.ts';
import { fetchLine } from '../fetch/line/fetch-line.ts';
import { planLineFetch } from '../fetch/line/plan-line-fetch.ts';
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
    onProgress: ({ done, of, secondsLeft, waiting }) =>
      hooks.onProgress({
        what: waiting === undefined ? `Fetching from ${host}, ${done} of ${of}` : `Waiting for ${host}`,
        share: of === 0 ? FETCHING_SHARE : (FETCHING_SHARE * done) / of,
        secondsLeft,
      }),
  });
  if (!fetched.ok) return fetched;
  const { path, notHad, notes, forget } = fetched.value;
  const name = `Along ${clip(drive.name, 100)}`;
  const lacking = notHad.map(({ fromM, toM }) => ({ fromM, toM }));
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
  // what a later fetch would have to ask again stays where parts are still lacking
  if (lacking.length === 0) await forget();
  return ok({ kind: 'maps', maps: [put.value.name], lacking, notes: [...notes] });
}

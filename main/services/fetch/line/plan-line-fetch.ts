import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { type Estimate, estimate } from '../../../../geo/fetch/line/estimate.ts';
import { type LinePlan, planPieces } from '../../../../geo/fetch/line/plan-pieces.ts';
import { MOST_RADIUS_M } from '../../../../geo/fetch/line/radius.ts';
import { fail, ok, type Result } from '../../../../geo/result.ts';
import type { DrawnRoute } from '../../../../geo/roads/discs.ts';
import { messageOf } from '../../files/system-error.ts';
import { type Asked, type AskedToday, askedToday } from '../asked-today.ts';
import { readServerAddress } from '../http/address.ts';
import type { Pace } from '../pace.ts';
import { type Job, jobsOf, questionOf } from './job.ts';
import { type KeptAnswers, keyOf, openKeptAnswers } from './kept-answers.ts';
import { isShared } from './manners.ts';
import { sayPrivacy } from './say-line-fetch.ts';

/** What a fetch along a drive would ask, of whom and how much. Nothing has been sent yet. */
export interface LineFetchPlan {
  /** who is asked, for the user to agree to */
  readonly host: string;
  /** questions to ask, and how many answers are here already from an earlier time */
  readonly questions: number;
  readonly kept: number;
  /** of what is still to come */
  readonly estimate: Estimate;
  /** of this server, by all programs on this data folder */
  readonly askedToday: Asked;
  /** the public server, which many share */
  readonly isShared: boolean;
  readonly lengthM: number;
  /** what is sent to whom, in one sentence */
  readonly privacy: string;
  /** what the fetched map will not hold, in sentences */
  readonly limits: readonly string[];
  /** for `fetchLine` */
  readonly prepared: Prepared;
}

export interface Prepared {
  readonly server: URL;
  readonly folder: string;
  /** names the map */
  readonly id: string;
  readonly plan: LinePlan;
  readonly jobs: readonly Job[];
  readonly keptAnswers: KeptAnswers;
  readonly asked: AskedToday;
  readonly pace: Pace;
  readonly limits: readonly string[];
}

export interface LineFetchSettings {
  /** the address of an Overpass server's interpreter, as typed or by default */
  readonly server: string;
  /** the data folder */
  readonly dataFolder: string;
  readonly pace: Pace;
}

/** Works out what would be asked. Reads what an earlier time kept, and sends nothing. */
export async function planLineFetch(
  route: DrawnRoute,
  { server: address, dataFolder, pace }: LineFetchSettings,
): Promise<Result<LineFetchPlan>> {
  const read = readServerAddress(address);
  if (!read.ok) return read;
  const server = read.value;
  const digest = digestOf(route);
  const plan = planPieces(route, digest.readUInt32LE(0));
  if (plan.pieces.length === 0)
    return fail('line.nowhere', 'The drive has no length, so there is no map to fetch along it.');
  const folder = join(dataFolder, 'fetch');
  try {
    const keptAnswers = await openKeptAnswers(join(folder, 'line'), pace.now);
    const jobs = jobsOf(plan.pieces, plan.places);
    const isKept = (job: Job) => keptAnswers.has(keyOf(server, questionOf(job)));
    const open = jobs.filter((job) => !isKept(job));
    const asked = askedToday(folder, pace.now);
    const limits = limitsOf(plan);
    return ok({
      host: server.host,
      questions: open.length,
      kept: jobs.length - open.length,
      estimate: estimate(open.flatMap((job) => (job.is === 'piece' ? [job.piece] : []))),
      askedToday: await asked.of(server.host),
      isShared: isShared(server),
      lengthM: plan.lengthM,
      privacy: sayPrivacy(server.host, jobs.length),
      limits,
      prepared: {
        server,
        folder,
        id: digest.toString('hex').slice(0, 12),
        plan,
        jobs,
        keptAnswers,
        asked,
        pace,
        limits,
      },
    });
  } catch (error) {
    return fail(
      'line.not-kept',
      `What is fetched cannot be kept in ${folder} (${messageOf(error)}). Make room there, or see to it that the folder can be written to.`,
    );
  }
}

function limitsOf({ sparseM }: LinePlan): string[] {
  const narrow = 'Only what lies close to the drive is fetched; a way round needs the map of the region.';
  if (sparseM === undefined) return [narrow];
  return [
    narrow,
    `Points of this drive lie up to ${Math.round(sparseM / 1000)} km apart; roads more than ${MOST_RADIUS_M / 1000} km beside the straight line between them are not fetched. A denser file is better.`,
  ];
}

/** The same for the same line, whoever drew it: so that what is asked again is asked as before. */
function digestOf({ segments }: DrawnRoute): Buffer {
  const hash = createHash('sha256');
  for (const { lat, lon } of segments) {
    hash.update(`${lat.length};`);
    for (let i = 0; i < lat.length; i++) hash.update(`${lat[i]?.toFixed(6)},${lon[i]?.toFixed(6)};`);
  }
  return hash.digest();
}

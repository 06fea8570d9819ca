import type { DayPlan } from '../../../geo/day/plan.ts';
import { given } from '../../../geo/given.ts';
import { fail, type Result } from '../../../geo/result.ts';
import type { Library } from '../library/library.ts';

/** What is otherwise of a drive: null takes it away, what is left out stays. */
interface DriveChange {
  readonly name?: string | null | undefined;
  readonly leaveAt?: string | null | undefined;
  /** the day's stops and return hour */
  readonly plan?: DayPlan | null | undefined;
}

/**
 * Gives a drive of the library another name, leave time or day.
 * @param over the versions that the change was made from; all there are where left out
 */
export async function changeDrive(
  library: Library,
  id: string,
  change: DriveChange,
  over?: readonly string[],
): Promise<Result<unknown>> {
  const item = library.find('drive', id);
  const version = item?.versions.find(({ name }) => over?.includes(name)) ?? item?.versions[0];
  if (version === undefined)
    return fail('library.none', 'That drive has been removed meanwhile. Look into the bin.');
  const { name, leaveAt, plan, ...body } = version.body;
  const chosen = given({
    name: chosenOf(change.name, name),
    leaveAt: chosenOf(change.leaveAt, leaveAt),
    plan: chosenOf(change.plan, plan),
  });
  return library.put({ kind: 'drive', id, body: { ...body, ...chosen }, ...given({ over }) });
}

function chosenOf<T, U extends T>(wanted: U | null | undefined, now: T | undefined): T | undefined {
  return wanted === undefined ? now : (wanted ?? undefined);
}

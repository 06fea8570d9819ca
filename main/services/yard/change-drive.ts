import { given } from '../../../geo/given.ts';
import { fail, type Result } from '../../../geo/result.ts';
import type { Library } from '../library/library.ts';

/** What is otherwise of a drive: null takes it away, what is left out stays. */
interface DriveChange {
  readonly name?: string | null | undefined;
  readonly leaveAt?: string | null | undefined;
}

/**
 * Gives a drive of the library another name or leave time.
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
  const { name, leaveAt, ...body } = version.body;
  const chosen = given({ name: chosenOf(change.name, name), leaveAt: chosenOf(change.leaveAt, leaveAt) });
  return library.put({ kind: 'drive', id, body: { ...body, ...chosen }, ...given({ over }) });
}

function chosenOf(wanted: string | null | undefined, now: string | undefined): string | undefined {
  return wanted === undefined ? now : (wanted ?? undefined);
}

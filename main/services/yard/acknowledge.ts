import { createHash } from 'node:crypto';
import { ok, type Result } from '../../../geo/result.ts';
import { seenChange } from '../../../geo/yard/seen-changes.ts';
import type { Library } from '../library/library.ts';
import { acceptChanges, type GridOf, knownCells } from './grid/grid.ts';

interface Pair {
  readonly drive: string;
  readonly vehicle: string;
}

/**
 * Keeps that a person has seen what is otherwise of pairs of drive and vehicle: in the library, for every computer, and
 * here, so that what comes next is compared with it.
 */
export async function acknowledge(
  { library, grid }: { readonly library: Library; readonly grid: GridOf & { readonly kept: string } },
  pairs: readonly Pair[],
  { by, on }: { readonly by: string; readonly on: string },
): Promise<Result<undefined>> {
  const asked = new Set(pairs.map(keyOf));
  const drives = new Set(pairs.map(({ drive }) => drive));
  const cells = await knownCells({ ...grid, drives: grid.drives.filter(({ id }) => drives.has(id)) });
  for (const { drive, vehicle, changes } of cells) {
    if (changes.length === 0 || !asked.has(keyOf({ drive, vehicle }))) continue;
    const body = { drive, vehicle, by, on, changes: changes.map((each) => ({ ...seenChange(each) })) };
    // made in two places alike it is one
    const id = `seen-${createHash('sha256').update(JSON.stringify(body)).digest('hex').slice(0, 24)}`;
    const put = await library.put({ kind: 'seen', id, body });
    if (!put.ok) return put;
    // it is on record: what cannot be written here is found answered at the next look
    await acceptChanges(grid.kept, { drive, vehicle }, [id]).catch(() => {});
  }
  return ok(undefined);
}

function keyOf({ drive, vehicle }: Pair): string {
  return JSON.stringify([drive, vehicle]);
}

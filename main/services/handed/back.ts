import { backId } from '../../../geo/library/body/back.ts';
import type { Result } from '../../../geo/result.ts';
import type { Library } from '../library/library.ts';

/** The day that each sheet's vehicle came back, by sheet number; those that are out are absent. */
export function backDays(library: Pick<Library, 'list'>): ReadonlyMap<string, string> {
  return new Map(
    library.list('back').flatMap(({ versions }) =>
      // told on two computers at once: either will do
      versions.flatMap(({ body: { number, on } }) => (on === undefined ? [] : [[number, on] as const])),
    ),
  );
}

/** Keeps that a sheet's vehicle is back. @param on YYYY-MM-DD; undefined: that was told by mistake, it is out */
export function tellBack(library: Library, number: string, on: string | undefined): Promise<Result<unknown>> {
  const body = { number, ...(on !== undefined && { on }) };
  return library.put({ kind: 'back', id: backId(number), body });
}

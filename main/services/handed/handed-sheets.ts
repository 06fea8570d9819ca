import { given } from '../../../geo/given.ts';
import type { HandedFacts } from '../../../geo/library/body/handed.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { listed, quote } from '../../../geo/units/text.ts';
import type { OutSheet } from '../../../geo/yard/handed/out-now.ts';
import type { Library } from '../library/library.ts';

/** Every sheet that was handed out, replaced ones too. */
export function handedSheets(library: Pick<Library, 'list'>): OutSheet[] {
  return library
    .list('handed')
    .flatMap(({ id, versions }) => versions.map(({ made, body }) => ({ id, made, body })));
}

/** Files by name, as they were handed over. */
type Files = Readonly<Record<string, string | Uint8Array>>;

/**
 * Keeps what was handed over as it is: each file byte for byte, and the record that names them. Nothing of it ever
 * changes.
 */
export async function keepHanded(
  library: Library,
  { number, facts, files }: { readonly number: string; readonly facts: HandedFacts; readonly files: Files },
): Promise<Result<undefined>> {
  const named: { name: string; sha256: string }[] = [];
  for (const [name, content] of Object.entries(files)) {
    const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
    const kept = await library.keepBytes('handed', bytes);
    if (!kept.ok) return kept;
    named.push({ name, sha256: kept.value });
  }
  const id = `handed-${number.toLowerCase()}`;
  const put = await library.put({ kind: 'handed', id, body: { ...facts, number, files: named } });
  return put.ok ? ok(undefined) : put;
}

/**
 * The sheet of a number, as typed or read out: in any letter case, with or without its hyphen, or as much of its
 * beginning as tells it from the others.
 */
export function findHanded(library: Library, typed: string): Result<OutSheet> {
  const plain = (text: string) => text.toUpperCase().replace(/[^A-Z0-9]/gu, '');
  const asked = plain(typed);
  const begun = handedSheets(library).filter(
    ({ body }) => asked !== '' && plain(body.number).startsWith(asked),
  );
  const [only] = begun;
  const found =
    begun.find(({ body }) => plain(body.number) === asked) ?? (begun.length === 1 ? only : undefined);
  if (found) return ok(found);
  if (begun.length > 1)
    return fail(
      'handed.several',
      `${quote(typed)} begins ${begun.length} sheet numbers: ${listed(begun.slice(0, 5).map(({ body }) => body.number))}. Type more of the one you mean.`,
    );
  return fail(
    'handed.none',
    `No sheet ${quote(typed)} is kept in the library in ${library.folder}. Sheet numbers are eight signs without 0 O 1 I L 2 Z 5 S 8 B U V; see 'lanegauge yard list'.`,
  );
}

/** The files of a sheet as they were handed over, each held against its hash. */
export async function readHanded(
  library: Pick<Library, 'readBytes'>,
  { body }: OutSheet,
): Promise<Result<Record<string, Uint8Array>>> {
  const files: Record<string, Uint8Array> = {};
  for (const { name, sha256 } of body.files) {
    const bytes = await library.readBytes('handed', sha256);
    if (!bytes.ok) return bytes;
    files[name] = bytes.value;
  }
  return ok(given(files));
}

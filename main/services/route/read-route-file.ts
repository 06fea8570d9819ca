import { fileKind, sayForeign } from '../../../geo/document/file-kind.ts';
import { readGpx } from '../../../geo/drive/gpx/read-gpx.ts';
import type { RouteFile } from '../../../geo/drive/gpx/route.ts';
import { fail, ok, type Problem, type Result } from '../../../geo/result.ts';
import { GPX_MAX_BYTES } from '../../contract/limits.ts';
import { readAsKept } from '../files/read-as-kept.ts';
import { decodeGpx } from './decode-gpx.ts';
import { LightDomBuilder } from './light-dom.ts';
import { compareWithGpxparser } from './second-opinion.ts';

/**
 * Above this many characters the strict reading stands alone. It is the reader of record: it alone proves the file,
 * keeps segments apart and knows lines. Measured: 10 MB with both readings 1.4 s; 50 MB 2.3 s strictly, and gpxparser
 * would add 4 s and over half a gigabyte.
 */
const SECOND_OPINION_MAX = 16 * 1024 * 1024;

/**
 * Reads a GPX file from disk. Every problem names the file.
 * @param sha256 of its bytes, where it was kept: another is refused
 */
export async function readRouteFile(path: string, sha256?: string): Promise<Result<RouteFile>> {
  const bytes = await readAsKept({ path, what: 'drive', mostBytes: GPX_MAX_BYTES, sha256 });
  return bytes.ok ? readRouteBytes(bytes.value, path) : bytes;
}

/** Reads a GPX file's bytes; `name` is for the sentences. */
export function readRouteBytes(bytes: Uint8Array, name: string): Result<RouteFile> {
  if (bytes.length > GPX_MAX_BYTES) return tooLarge(name, bytes.length);
  const kind = fileKind(bytes);
  // of these the decoder tells more
  const foreign = kind === 'empty' || kind === 'zip' ? undefined : sayForeign(kind, name);
  if (foreign !== undefined) return fail('gpx.foreign', foreign);
  const decoded = decodeGpx(bytes);
  if (!decoded.ok) return named(name, decoded);
  const { text, notes } = decoded.value;
  const built = text.length > SECOND_OPINION_MAX ? undefined : new LightDomBuilder();
  const read = readGpx(text, built);
  if (!read.ok) return named(name, read);
  if (built) {
    const agreed = compareWithGpxparser(built.document, read.value);
    if (!agreed.ok) return named(name, agreed);
  }
  return ok({ ...read.value, notes: [...notes, ...read.value.notes] });
}

function tooLarge(name: string, size: number): Result<never> {
  const mib = (bytes: number) => Math.ceil(bytes / 1024 / 1024);
  return fail(
    'gpx.tooLarge',
    `${name}: ${mib(size)} MiB is more than the ${mib(GPX_MAX_BYTES)} MiB read; export the drive alone, with fewer positions.`,
  );
}

function named(name: string, refused: { readonly error: Problem }): Result<never> {
  return fail(refused.error.code, `${name}: ${refused.error.message}`);
}

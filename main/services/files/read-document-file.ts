import { fileKind, HEAD_BYTES, sayNoDocument } from '../../../geo/document/file-kind.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { openOrdinary, readBytes, unreadable } from './read-bytes.ts';

/**
 * The text of a file that a person may write by hand. A picture or another kind of file is refused as what it is, however
 * large.
 * @param what it is meant to be, for the message: `vehicle card`
 */
export async function readDocumentFile(
  path: string,
  what: string,
  maxBytes: number,
): Promise<Result<string>> {
  const head = await readHead(path, what);
  if (!head.ok) return head;
  const other = sayNoDocument(fileKind(head.value), path, what);
  if (other !== undefined) return fail('other-kind', other);
  const bytes = await readBytes(path, what, maxBytes);
  return bytes.ok ? ok(new TextDecoder().decode(bytes.value)) : bytes;
}

async function readHead(path: string, what: string): Promise<Result<Uint8Array>> {
  const opened = await openOrdinary(path, what);
  if (!opened.ok) return opened;
  const { handle } = opened.value;
  try {
    const head = new Uint8Array(HEAD_BYTES);
    const { bytesRead } = await handle.read(head, 0, HEAD_BYTES, 0);
    return ok(head.subarray(0, bytesRead));
  } catch (error) {
    return { ok: false, error: unreadable(path, what, error) };
  } finally {
    await handle.close();
  }
}

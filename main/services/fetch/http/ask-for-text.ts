import { ok, type Result } from '../../../../geo/result.ts';
import { type Answer, type Ask, askServer } from './ask-server.ts';
import { type HttpFault, httpFault } from './fault.ts';

/** The same for an answer that is UTF-8 text and fits into memory: `most.unpacked` is held at once. */
export async function askForText(ask: Ask): Promise<Result<Answer & { readonly text: string }, HttpFault>> {
  const utf8 = new TextDecoder('utf-8', { fatal: true });
  const pieces: string[] = [];
  let broken = false;
  const decode = (chunk?: Uint8Array) => {
    try {
      pieces.push(utf8.decode(chunk, { stream: chunk !== undefined }));
    } catch {
      broken = true;
    }
  };
  const answer = await askServer(ask, () => (chunk) => {
    if (!broken) decode(chunk);
  });
  if (!answer.ok) return answer;
  if (!broken) decode();
  if (broken)
    return {
      ok: false,
      error: httpFault(ask.server.host, { kind: 'garbled', said: 'it is not UTF-8 text' }),
    };
  return ok({ ...answer.value, text: pieces.join('') });
}

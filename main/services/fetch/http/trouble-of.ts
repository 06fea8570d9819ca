import { clip } from '../../../../geo/units/text.ts';
import { codeOf, messageOf } from '../../files/system-error.ts';
import type { HttpTrouble } from './fault.ts';

/** What the system calls a name that it cannot find. */
const NAMELESS = ['ENOTFOUND', 'EAI_AGAIN', 'EAI_NODATA', 'EAI_NONAME'];

/** The connection stood, and ended. */
const BROKEN = ['ECONNRESET', 'EPIPE', 'ERR_STREAM_PREMATURE_CLOSE', 'HPE_INVALID_EOF_STATE', 'ECONNABORTED'];

/** In plain words where there are some, else in the system's own. */
const PLAIN: Readonly<Record<string, string>> = {
  ECONNREFUSED: 'it takes no calls',
  EHOSTUNREACH: 'there is no way to it',
  ENETUNREACH: 'there is no network',
  ETIMEDOUT: 'it does not answer',
  DEPTH_ZERO_SELF_SIGNED_CERT: 'its certificate is signed by itself alone',
  SELF_SIGNED_CERT_IN_CHAIN: 'its certificate is signed by nobody this computer knows',
  UNABLE_TO_VERIFY_LEAF_SIGNATURE: 'its certificate is signed by nobody this computer knows',
  UNABLE_TO_GET_ISSUER_CERT_LOCALLY: 'its certificate is signed by nobody this computer knows',
  CERT_HAS_EXPIRED: "its certificate has run out, or this computer's date is wrong",
  CERT_NOT_YET_VALID: "its certificate is not valid yet, or this computer's date is wrong",
  ERR_TLS_CERT_ALTNAME_INVALID: "its certificate is another server's",
};

/**
 * What an error of the connection means.
 * @param bytes of the answer's body that had come
 */
export function troubleOf(error: unknown, bytes: number): HttpTrouble {
  const code = String(codeOf(error) ?? '');
  const said = PLAIN[code] ?? clip(messageOf(error));
  if (NAMELESS.includes(code)) return { kind: 'nameless' };
  if (BROKEN.includes(code)) return { kind: 'broken', bytes };
  if (code.startsWith('HPE_')) return { kind: 'garbled', said };
  if (/CERT|SIGNATURE|ERR_TLS|ERR_SSL|EPROTO/u.test(code)) return { kind: 'certificate', said };
  return { kind: 'unreachable', said };
}

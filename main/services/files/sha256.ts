import { hash } from 'node:crypto';

/** The SHA-256 of a text's UTF-8 or of bytes, in hexadecimal: what the library names its records by. */
export function sha256Of(content: string | Uint8Array): string {
  return hash('sha256', content);
}

import { fail, ok, type Problem, type Result } from '../../../geo/result.ts';

/** A file's text and what had to be assumed to get it. */
export interface DecodedText {
  readonly text: string;
  readonly notes: readonly string[];
}

/**
 * Turns a GPX file's bytes into text: by byte order mark, by the zero bytes of UTF-16, by the encoding the file
 * declares, else UTF-8. What is not UTF-8 and declares nothing better is taken as windows-1252 and said so.
 *
 * Packed files and other known formats are refused by name.
 */
export function decodeGpx(bytes: Uint8Array): Result<DecodedText> {
  const binary = nameBinary(bytes);
  if (binary) return { ok: false, error: binary };
  const wide = wideEncoding(bytes);
  if (wide) {
    const text = decode(bytes, wide);
    return text === undefined ? fail('gpx.encoding', undecodable(wide)) : ok({ text, notes: [] });
  }
  const declared = declaredEncoding(bytes);
  if (declared === undefined || isUtf8(declared) || declared.startsWith('utf-16')) return decodeUtf8(bytes);
  if (isLatin(declared)) return ok({ text: decodeWindows1252(bytes), notes: [] });
  try {
    const text = decode(bytes, declared);
    return text === undefined ? fail('gpx.encoding', undecodable(declared)) : ok({ text, notes: [] });
  } catch {
    return fail(
      'gpx.encoding',
      `The file says it is encoded as "${declared}", which is not known here; export it as UTF-8.`,
    );
  }
}

function decodeUtf8(bytes: Uint8Array): Result<DecodedText> {
  const text = decode(bytes, 'utf-8');
  if (text !== undefined) return ok({ text, notes: [] });
  return ok({
    text: decodeWindows1252(bytes),
    notes: ['The file is not UTF-8; names were read as windows-1252 and may show wrong letters.'],
  });
}

/** @returns undefined when the bytes do not fit the encoding; throws RangeError when there is no such encoding */
function decode(bytes: Uint8Array, encoding: string): string | undefined {
  const decoder = new TextDecoder(encoding, { fatal: true });
  try {
    return decoder.decode(bytes);
  } catch {
    return undefined;
  }
}

function undecodable(encoding: string): string {
  return `The file is damaged: its bytes do not fit its encoding, ${encoding}; export the drive again.`;
}

function nameBinary(bytes: Uint8Array): Problem | undefined {
  const starts = (...codes: number[]) => codes.every((code, i) => bytes[i] === code);
  const refuse = (what: string, todo: string) => fail('gpx.notGpx', `This is ${what}; ${todo}.`).error;
  if (bytes.length === 0) return fail('gpx.blank', 'The file is empty; export the drive again.').error;
  if (starts(0x1f, 0x8b)) return refuse('a gzip file', 'unpack it first');
  if (starts(0x50, 0x4b, 0x03, 0x04))
    return refuse('a zip (or KMZ) file', 'unpack it and give the GPX file inside');
  if (starts(0xff, 0xfe, 0, 0) || starts(0, 0, 0xfe, 0xff))
    return fail('gpx.encoding', 'The file is encoded as UTF-32; export it as UTF-8.').error;
  if (bytes[8] === 0x2e && bytes[9] === 0x46 && bytes[10] === 0x49 && bytes[11] === 0x54)
    return refuse('a FIT recording', 'export the drive as GPX');
  return undefined;
}

function wideEncoding(bytes: Uint8Array): string | undefined {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  // no mark, but half of every letter is zero
  if (second === 0 && first !== 0 && bytes[3] === 0) return 'utf-16le';
  if (first === 0 && second !== 0 && bytes[2] === 0) return 'utf-16be';
  return undefined;
}

function declaredEncoding(bytes: Uint8Array): string | undefined {
  const head = Buffer.from(bytes.subarray(0, 400)).toString('latin1');
  const declaration = /^(?:ï»¿)?[\s\0]*<\?xml[^>]*?\sencoding\s*=\s*["']([\w.:-]+)["']/u.exec(head);
  return declaration?.[1]?.toLowerCase();
}

function isUtf8(label: string): boolean {
  return label === 'utf-8' || label === 'utf8';
}

/** ASCII and Latin-1 are read as windows-1252, their superset, as browsers do. */
function isLatin(label: string): boolean {
  return /^(?:windows-?1252|cp-?1252|x-cp1252|iso-?8859-?1|latin-?1|l1|us-ascii|ascii)$/u.test(label);
}

/** What windows-1252 has at 0x80 to 0x9f; some builds of Node leave these bytes as they are. */
const AT_0X80 = '€\x81‚ƒ„…†‡ˆ‰Š‹Œ\x8dŽ\x8f\x90‘’“”•–—˜™š›œ\x9džŸ';

function decodeWindows1252(bytes: Uint8Array): string {
  const latin = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
  return latin.replace(/[\x80-\x9f]/gu, (letter) => AT_0X80.charAt(letter.charCodeAt(0) - 0x80));
}

import { open } from 'node:fs/promises';
import type { FileUse } from '../../contract/source.ts';

const LOOK_AT_BYTES = 4096;

/** Tells a drive from a map by what the file holds, by its name only where that says nothing. */
export async function fileUse(path: string, name: string): Promise<FileUse> {
  const handle = await open(path, 'r');
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(LOOK_AT_BYTES), 0, LOOK_AT_BYTES, 0);
    const text = asText(buffer.subarray(0, bytesRead));
    if (/<(?:\w+:)?gpx[\s>]/.test(text)) return 'drive';
    if (/<osm[\s>]|OSMHeader/.test(text)) return 'map';
  } finally {
    await handle.close();
  }
  return /\.gpx$/i.test(name) ? 'drive' : 'map';
}

function asText(bytes: Buffer): string {
  const utf16 = bytes[0] === 0xff && bytes[1] === 0xfe;
  return bytes.toString(utf16 ? 'utf16le' : 'latin1');
}

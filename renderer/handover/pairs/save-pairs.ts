import { Zip, ZipDeflate } from 'fflate';
import { folderName } from '../../../geo/handover/folder-name.ts';
import { downloadFile } from '../../host/download.ts';
import type { NamedPair } from '../../state/sheet-wanted.ts';
import { filesOf, keptSheet } from '../work.ts';

/** A pair that was handed over, and the number it is kept under. */
export type HandedPair = NamedPair & { readonly number: string };

/**
 * Saves several as one archive with a folder for each drive and vehicle.
 * @param onDone hears how many are in it
 * @returns a sentence where one could not be had: then nothing is saved
 */
export async function savePairs(
  pairs: readonly HandedPair[],
  { stop, onDone }: { readonly stop: AbortSignal; onDone(count: number): void },
): Promise<string | undefined> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const zip = new Zip((_, part) => parts.push(Uint8Array.from(part)));
  const folders: string[] = [];
  for (const [i, { number, driveName, vehicleName }] of pairs.entries()) {
    const kept = await keptSheet(number);
    if (stop.aborted) return undefined;
    if (kept.kind !== 'done') return kept.kind === 'problem' ? `Sheet ${number}: ${kept.say}` : undefined;
    const folder = folderName([driveName, vehicleName], folders);
    folders.push(folder);
    for (const [name, bytes] of Object.entries(filesOf(kept.handed))) {
      const file = new ZipDeflate(`${folder}/${name}`, { level: 6 });
      zip.add(file);
      file.push(bytes, true);
    }
    onDone(i + 1);
  }
  zip.end();
  downloadFile(new File(parts, `drives-${pairs.length}.zip`, { type: 'application/zip' }));
  return undefined;
}

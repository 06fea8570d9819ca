import { ok, type Result } from '../../../geo/result.ts';
import { counted, quote } from '../../../geo/units/text.ts';
import { type FoundMap, findMaps } from '../../services/shelf/shelf-folder.ts';
import { findByName, type VerifiedMap, verifyMaps } from '../../services/shelf/shelf-work.ts';
import { jsonText } from '../json-text.ts';
import { readWords } from '../read-words.ts';
import type { ShelfCommand } from './command.ts';
import { EMPTY_SHELF } from './print-maps.ts';

/** `shelf verify [NAME] [--repair]`: reads all of a map, or of all maps. Exit 1 where something stays damaged. */
export const shelfVerify: ShelfCommand = async (words, { progress, signal }, tools) => {
  const read = readWords(words, { once: [], flags: ['json', 'repair'], bare: 1 });
  if (!read.ok) return read;
  const { bare, flag } = read.value;
  const maps = await wantedMaps(tools.shelf, bare[0]);
  if (!maps.ok) return maps;
  const verified = await verifyMaps(
    tools,
    maps.value,
    { repair: flag('repair'), note: false },
    { signal, onProgress: ({ what, share }) => progress.show(what, share) },
  );
  if (!verified.ok) return verified;
  const exit = verified.value.every(isSound) ? 0 : 1;
  if (flag('json')) return ok({ text: jsonText({ maps: verified.value }), exit });
  return ok({
    text: verified.value.length === 0 ? EMPTY_SHELF : verified.value.map(sayVerified).join(''),
    exit,
  });
};

async function wantedMaps(shelf: string, name: string | undefined): Promise<Result<FoundMap[]>> {
  if (name === undefined) return ok(await findMaps(shelf));
  const found = await findByName(shelf, name);
  return found.ok ? ok([found.value]) : found;
}

function isSound({ state, repair }: VerifiedMap): boolean {
  return state === 'ready' || repair?.done === true;
}

function sayVerified({ name, state, blocks, damagedBlocks, repair }: VerifiedMap): string {
  if (state === 'ready') return `${quote(name)}: all of it can be read (${counted(blocks, 'piece')}).\n`;
  const lost = blocks === 0 ? 'nothing of it can' : `${counted(damagedBlocks, 'piece')} of it cannot`;
  const found = `${quote(name)} is damaged: ${lost} be read.`;
  return repair === undefined
    ? `${found} Checks leave out what cannot be read. Mend it with: lanegauge shelf verify --repair\n`
    : `${found} ${repair.say}\n`;
}

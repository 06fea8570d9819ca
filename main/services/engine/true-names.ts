import { basename } from 'node:path';
import { fail, type Problem, type Result } from '../../../geo/result.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import type { NamedFile } from './protocol.ts';

/** A copy lies under a path that says nothing to the user: sentences and reports name the file as it was given. */
export function underItsName({ code, message }: Problem, file: NamedFile): Result<never> {
  return fail(code, nameIn(message, file));
}

/** The map with its file's name as the user knows it. */
export function nameSources(roads: Roads, file: NamedFile): Roads {
  return {
    ...roads,
    sources: roads.sources.map((source) => ({ ...source, name: file.name })),
    notes: roads.notes.map((note) => nameIn(note, file)),
  };
}

function nameIn(sentence: string, { path, name }: NamedFile): string {
  return sentence.replaceAll(path, () => name).replaceAll(basename(path), () => name);
}

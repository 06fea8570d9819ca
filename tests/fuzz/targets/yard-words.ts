import { mappersCsv } from '../../../geo/notes/for-mappers.ts';
import { notesGeoJson, readNotesGeoJson } from '../../../geo/notes/geojson.ts';
import type { LocalNote } from '../../../geo/notes/note.ts';
import { VERDICTS } from '../../../geo/report/level.ts';
import { type Grid, gridCsv } from '../../../geo/yard/grid-told.ts';
import { printMaps } from '../../../main/cli/shelf/print-maps.ts';
import { printPlan } from '../../../main/cli/yard/print-day.ts';
import { printGrid } from '../../../main/cli/yard/print-grid.ts';
import { printNote } from '../../../main/cli/yard/print-note.ts';
import { csvFault } from '../../support/strict/csv-fault.ts';
import { hostileName } from '../make/names.ts';
import { faultInSentence, faultInShown } from '../promises.ts';
import { jsonTarget } from '../target.ts';

const AT = { lat: 50, lon: 7 };

/** Names of the yard in a terminal, in tables, and as notes for another firm. */
export const yardWords = jsonTarget<readonly string[]>({
  name: 'the yard in words',
  weight: 3,
  make: (random) => Array.from({ length: 6 }, () => hostileName(random)),
  check([drive = '', vehicle = '', say = '', by = '', map = '', why = '']) {
    const named = [
      { id: 'd-1', name: drive },
      { id: 'd-2', name: why },
    ];
    const grid: Grid = {
      drives: named,
      vehicles: [{ id: 'v-1', name: vehicle }],
      cells: [{ drive: 'd-1', vehicle: 'v-1', cell: CELL, stale: ['map', 'note'] }],
    };
    const note: LocalNote = { id: 'note-1', at: AT, say, by, heightM: 3.4, road: { name: map, ref: why } };
    const printed = [
      printGrid(grid, [{ ...named[1]!, say: why.slice(0, 300) }], 'metric'),
      printPlan(drive, {
        beside: [],
        now: '2027-06-12T09:30',
        plan: { stops: [{ name: vehicle, ...AT, stayMin: 5 }] },
      }),
      printNote({
        id: 'note-1',
        kind: 'note',
        versions: [{ name: 'a', made: '', body: { ...note } }],
        heads: [],
        newer: false,
      }),
      printMaps([{ ...MAP, name: map, sources: [{ name: why, sha256: '' }] }]),
    ];
    const mapped = mappersCsv([
      {
        stands: 'mapped lower',
        note,
        figure: { subject: 'height', value: 3.4 },
        road: map,
        mapped: { key: 'maxheight', text: drive, value: 3 },
      },
    ]);
    return (
      faultInShown(printed.flatMap((text) => text.split('\n')).filter((line) => line !== '')) ??
      csvFault(gridCsv(grid), 2) ??
      csvFault(mapped, 2) ??
      faultInNotes(note)
    );
  },
});

/** What another firm reads of a note is what it says, or a sentence why it cannot be taken. */
function faultInNotes(note: LocalNote): string | undefined {
  const read = readNotesGeoJson(JSON.stringify(notesGeoJson([note])), 'notes.geojson');
  if (!read.ok) return faultInSentence(read.error.message);
  return undefined;
}

const CELL: Grid['cells'][number]['cell'] = {
  verdict: VERDICTS[0],
  counts: { barred: 1, tight: 0, unknown: 0, care: 0 },
  stops: [],
  trouble: [],
};
const MAP = { roads: 1, bytes: 10, imported: '2027-06-12T09:30:00Z', state: 'damaged' as const };

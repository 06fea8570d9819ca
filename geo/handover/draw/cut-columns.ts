import type { PlaceToKnow } from '../document/document.ts';

/** No column holds more of either: metres where nothing is said, or findings. */
const COLUMN_M = 25_000;
const COLUMN_PLACES = 20;
const MOST_COLUMNS = 12;

/** Where the strip is cut: by length, and earlier where much is said. */
export function cutColumns(
  lengthM: number,
  places: readonly PlaceToKnow[],
): { readonly fromM: number; readonly toM: number }[] {
  const columnM = Math.max(COLUMN_M, lengthM / MOST_COLUMNS);
  const cuts: number[] = [0];
  let count = 0;
  for (const { finding } of places) {
    while (finding.fromM - cuts.at(-1)! > columnM) {
      cuts.push(cuts.at(-1)! + columnM);
      count = 0;
    }
    if (count >= COLUMN_PLACES && finding.fromM > cuts.at(-1)!) {
      cuts.push(finding.fromM);
      count = 0;
    }
    count++;
  }
  while (lengthM - cuts.at(-1)! > columnM * 1.2) cuts.push(cuts.at(-1)! + columnM);
  return cuts.map((fromM, i) => ({ fromM, toM: cuts[i + 1] ?? lengthM }));
}

import type { PlaceToKnow } from '../document/document.ts';

/** No column holds more of either: metres where little is said, or findings. */
const COLUMN_M = 30_000;
const COLUMN_PLACES = 20;
const MOST_COLUMNS = 12;
export const COLUMNS_A_PAGE = 3;

interface Span {
  readonly fromM: number;
  readonly toM: number;
}

/** Where the strip is cut: into even lengths, and earlier where much is said. Metres along the drive. */
export function cutColumns(lengthM: number, places: readonly PlaceToKnow[]): Span[] {
  const columnM = lengthM / columnsFor(lengthM);
  const cuts: number[] = [0];
  let count = 0;
  const cutAt = (m: number) => {
    cuts.push(m);
    count = 0;
  };
  for (const { finding } of places) {
    while (finding.fromM - cuts.at(-1)! > columnM) cutAt(cuts.at(-1)! + columnM);
    if (count >= COLUMN_PLACES && finding.fromM > cuts.at(-1)!) cutAt(finding.fromM);
    count++;
  }
  // a last bit is not worth a column of its own
  while (lengthM - cuts.at(-1)! > columnM * 1.2) cutAt(cuts.at(-1)! + columnM);
  return cuts.map((fromM, i) => ({ fromM, toM: cuts[i + 1] ?? lengthM }));
}

/** As many as the length asks for; one alone on a last page is given to the others. */
function columnsFor(lengthM: number): number {
  const count = Math.min(MOST_COLUMNS, Math.max(1, Math.ceil(lengthM / COLUMN_M)));
  return count > COLUMNS_A_PAGE && count % COLUMNS_A_PAGE === 1 ? count - 1 : count;
}

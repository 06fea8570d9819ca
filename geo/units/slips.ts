/**
 * How many slips of the hand lie between two words: a letter missing, too many, wrong, or two that changed places.
 * Optimal string alignment distance (Damerau 1964, no part edited twice).
 */
export function slips(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let count = Math.min(at(last, j) + 1, at(row, j - 1) + 1, at(last, j - 1) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        count = Math.min(count, at(before, j - 2) + 1);
      row.push(count);
    }
    before = last;
    last = row;
  }
  return at(last, b.length);
}

function at(row: readonly number[], j: number): number {
  return row[j]!;
}

/** Longer words are not misspelt but something else; to compare them would take long. */
const LONGEST = 40;

/** The one of the known words that a misspelt one was most likely meant to be, letter case aside; undefined for none near enough. */
export function wordMeant(written: string, known: Iterable<string>): string | undefined {
  if (written.length > LONGEST) return undefined;
  // a third of the letters wrong is another word
  let least = Math.min(3, Math.floor(written.length / 3) + 1);
  let meant: string | undefined;
  for (const word of known) {
    const count = slips(written.toLowerCase(), word.toLowerCase());
    if (count >= least) continue;
    least = count;
    meant = word;
  }
  return meant;
}

/** ` (did you mean "height"?)`, or nothing where no known word is near. @param show how the word is written in a sentence */
export function askMeant(
  written: string,
  known: Iterable<string>,
  show = (word: string): string => `"${word}"`,
): string {
  const meant = wordMeant(written, known);
  return meant === undefined ? '' : ` (did you mean ${show(meant)}?)`;
}

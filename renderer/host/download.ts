/** Gives the browser a file of JSON to save. @param stem what it is called, as the user wrote it */
export function downloadJson(value: object, stem: string): void {
  const link = document.createElement('a');
  const text = `${JSON.stringify(value, null, 2)}\n`;
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.download = `${stem.replace(/[^\p{L}\p{N}.-]+/gu, '-').slice(0, STEM_LONGEST)}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), FETCHED_MS);
}

/** Every file system takes names this long. */
const STEM_LONGEST = 70;
/** By then the browser has the file. */
const FETCHED_MS = 1000;

/** Gives the browser a file of JSON to save. @param stem what it is called, as the user wrote it */
export function downloadJson(value: object, stem: string): void {
  const text = `${JSON.stringify(value, null, 2)}\n`;
  downloadFile(new File([text], fileName(stem, 'json'), { type: 'application/json' }));
}

/** Gives the browser a file to save under its name. */
export function downloadFile(file: File): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), FETCHED_MS);
}

/** A name that every file system takes. @param stem as the user wrote it */
export function fileName(stem: string, ending: string): string {
  return `${stem.replace(/[^\p{L}\p{N}.-]+/gu, '-').slice(0, STEM_LONGEST)}.${ending}`;
}

/** Every file system takes names this long. */
const STEM_LONGEST = 70;
/** By then the browser has the file. */
const FETCHED_MS = 1000;

/** What steers a terminal or hides in it, though JSON lets it stand. */
const STEERING = /(?!\n)[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu;

/** A value as JSON to print: the same value to whoever reads it, and harmless to whoever sees it. */
export function jsonText(value: unknown): string {
  const escaped = JSON.stringify(value, null, 2).replace(STEERING, (character) =>
    // a character beyond the first plane is written as its two halves
    Array.from({ length: character.length }, (_, i) => escapeOf(character.charCodeAt(i))).join(''),
  );
  return `${escaped}\n`;
}

function escapeOf(code: number): string {
  return `\\u${code.toString(16).padStart(4, '0')}`;
}

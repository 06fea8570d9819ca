/** What no text of a map can hold: XML allows no control character but tab and line ends, and no half of a character. */
const UNSOUND = /(?![\t\n\r\x7F-\x9F])\p{Cc}|[\p{Cs}\uFFFE\uFFFF]/u;

/** Whether a key, value or role can be one of a map: else the file is damaged, and what it says may be lost. */
export function isSoundText(text: string): boolean {
  return !UNSOUND.test(text);
}

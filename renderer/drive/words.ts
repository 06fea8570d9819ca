/** Text from a file, cut where it would fill the screen; control characters, line ends among them, shown as spaces. */
export function clip(text: string, max = 120): string {
  const plain = text.replace(/\p{Cc}+/gu, ' ').trim();
  const letters = [...plain.slice(0, 2 * max + 2)];
  return letters.length > max ? `${letters.slice(0, max).join('')}…` : plain;
}

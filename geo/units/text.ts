/**
 * A text of a user's or a file's made safe to show: line breaks and tabs become spaces; other control characters, which
 * could move a cursor or ring a bell, marks that turn the reading direction or show nothing, and halves of characters
 * become a visible stand-in. The one filter for whatever is shown and was not written here.
 */
export function printable(text: string): string {
  return text.replace(/[\t\n\v\f\r\u0085\p{Zl}\p{Zp}]+/gu, ' ').replace(/[\p{Cc}\p{Cf}\p{Cs}]/gu, '\u00B7');
}

/** The same as one plain line, without white space about it. */
export function plainLine(text: string): string {
  return printable(text).trim();
}

/** A text cut to so many characters in all, the last an ellipsis where something was cut. */
export function cut(text: string, most: number): string {
  // what is long is not taken apart whole; a character takes two places at most
  const characters = [...text.slice(0, 2 * most + 2)];
  return characters.length > most ? `${characters.slice(0, most - 1).join('')}…` : text;
}

/** A text of a user's or a file's, plain and short enough to stand in a sentence or a row. */
export function clip(text: string, most = 120): string {
  return cut(plainLine(text), most);
}

/** The same between quotation marks. */
export function quote(text: string, most = 60): string {
  return `"${clip(text, most)}"`;
}

/** A sentence's beginning: the first letter large. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What stood at a sentence's beginning put into one: the first letter small. */
export function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** "a", "a and b", "a, b and c"; '' for none. */
export function listed(parts: readonly (string | number)[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

/** "1 gap", "3 gaps". @param many where an s does not do */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** "one place", "3 places". @param many where an s does not do */
export function countedInWords(count: number, one: string, many = `${one}s`): string {
  return count === 1 ? `one ${one}` : `${count} ${many}`;
}

/** What stands before the first of a mark; the whole text where there is none. */
export function beforeFirst(text: string, mark: string): string {
  const at = text.indexOf(mark);
  return at < 0 ? text : text.slice(0, at);
}

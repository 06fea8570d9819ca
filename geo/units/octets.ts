/** Octets of one character in UTF-8. */
export function octetsOf(character: string): number {
  const code = character.codePointAt(0)!;
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
}

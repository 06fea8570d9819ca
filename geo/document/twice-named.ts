/**
 * The first field that one object of a JSON text names twice, or undefined. The parser would keep the last and say
 * nothing. Escaped spellings of one name are seen as the parser sees them.
 * @param text valid JSON
 */
export function twiceNamed(text: string): string | undefined {
  const open: Set<string>[] = [];
  const token = /"(?:[^"\\]|\\.)*"(\s*:)?|[{}]/g;
  for (let match = token.exec(text); match !== null; match = token.exec(text)) {
    const [found, colon] = match;
    if (found === '{') open.push(new Set());
    else if (found === '}') open.pop();
    else if (colon !== undefined) {
      const name = String(JSON.parse(found.slice(0, found.length - colon.length)));
      const names = open.at(-1);
      if (names?.has(name)) return name;
      names?.add(name);
    }
  }
  return undefined;
}

/**
 * Joins lines that meet end to end, turning some round where needed. Each line is used once; where more than two
 * meet, the first found goes on.
 * @param lines node places; each with at least two
 */
export function joinLines(lines: readonly Uint32Array[]): Uint32Array[] {
  const byEnd = new Map<number, number[]>();
  lines.forEach((line, i) => {
    for (const end of [first(line), last(line)]) {
      const there = byEnd.get(end);
      if (there) there.push(i);
      else byEnd.set(end, [i]);
    }
  });
  const used = new Uint8Array(lines.length);
  const takeAt = (end: number): Uint32Array | undefined => {
    const next = byEnd.get(end)?.find((i) => used[i] === 0);
    if (next === undefined) return undefined;
    used[next] = 1;
    return lines[next];
  };
  const joined: Uint32Array[] = [];
  lines.forEach((line, i) => {
    if (used[i] === 1) return;
    used[i] = 1;
    const ahead = [line];
    const behind: Uint32Array[] = [];
    let tail = last(line);
    let head = first(line);
    while (tail !== head) {
      const next = takeAt(tail);
      if (next === undefined) break;
      const onward = first(next) === tail ? next : next.toReversed();
      ahead.push(onward);
      tail = last(onward);
    }
    while (tail !== head) {
      const next = takeAt(head);
      if (next === undefined) break;
      const onward = last(next) === head ? next : next.toReversed();
      behind.push(onward);
      head = first(onward);
    }
    joined.push(concat([...behind.reverse(), ...ahead]));
  });
  return joined;
}

/** Whether a line of node numbers comes back to its first and encloses something. */
export function isClosed(line: Uint32Array): boolean {
  return line.length > 3 && first(line) === last(line);
}

function first(line: Uint32Array): number {
  return line[0]!;
}

function last(line: Uint32Array): number {
  return line[line.length - 1]!;
}

/** One line of several, the shared ends once. */
function concat(lines: readonly Uint32Array[]): Uint32Array {
  if (lines.length === 1) return lines[0] as Uint32Array;
  const out = new Uint32Array(lines.reduce((sum, line) => sum + line.length - 1, 1));
  let at = 0;
  for (const line of lines) {
    out.set(line, at);
    at += line.length - 1;
  }
  return out;
}

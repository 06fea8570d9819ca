/** So many answers are kept: map data have some hundred keys and values that come again and again. */
const MOST = 4096;

/**
 * The same function with its answers kept, for what is asked of the same few texts for each road. What it gives must
 * hang on the text alone and be changed by nobody.
 */
export function remembered<T>(answer: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    const there = known.get(text);
    if (there !== undefined || known.has(text)) return there as T;
    // whoever makes up texts costs time, not memory
    if (known.size >= MOST) known.clear();
    const made = answer(text);
    known.set(text, made);
    return made;
  };
}

/** Numbers in [0, 1) that are the same in every run: the district must come out alike each time it is made. */
export type Random = () => number;

/** Mulberry32: 32 bits of state are plenty for a map. */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export function between(random: Random, low: number, high: number): number {
  return low + (high - low) * random();
}

export function pick<T>(random: Random, list: readonly T[]): T {
  const chosen = list[Math.floor(random() * list.length)];
  if (chosen === undefined) throw new Error('nothing to pick from');
  return chosen;
}

/** Roughly normal, mean 0, standard deviation 1: the sum of twelve even ones. */
export function normal(random: Random): number {
  let sum = -6;
  for (let i = 0; i < 12; i++) sum += random();
  return sum;
}

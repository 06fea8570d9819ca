import { hostileNumber, hostileText } from './hostile.ts';
import type { Random } from './random.ts';

/** Sound JSON made unsound in one to three places: a value of another kind, a key lost, doubled or misspelt. */
export function mutateJson(value: unknown, random: Random): unknown {
  let mutated = value;
  for (let times = 1 + random.below(3); times > 0; times--) mutated = mutateOnce(mutated, random);
  return mutated;
}

function mutateOnce(value: unknown, random: Random): unknown {
  // goes down, and stops sooner or later
  if (Array.isArray(value) && value.length > 0 && random.chance(0.8)) {
    const at = random.below(value.length);
    const items: unknown[] = [...value];
    if (random.chance(0.15)) return [...items, ...items.slice(at)];
    if (random.chance(0.1)) return Array<unknown>(random.pick([0, 300, 3000])).fill(items[at]);
    items[at] = mutateOnce(items[at], random);
    return items;
  }
  if (isRecord(value) && random.chance(0.85)) {
    const keys = Object.keys(value);
    if (keys.length === 0 || random.chance(0.1)) return { ...value, [hostileText(random)]: anything(random) };
    const key = random.pick(keys);
    const { [key]: taken, ...rest } = value;
    if (random.chance(0.1)) return rest;
    if (random.chance(0.1)) return { ...rest, [`${key} `]: taken };
    return { ...value, [key]: mutateOnce(taken, random) };
  }
  if (typeof value === 'number' && random.chance(0.5))
    return random.pick([-value, value * 1000, value + 0.1, value / 3, String(value)]);
  if (typeof value === 'string' && random.chance(0.5)) return value + hostileText(random);
  return anything(random);
}

function anything(random: Random): unknown {
  return random.pick<() => unknown>([
    () => hostileNumber(random),
    () => hostileText(random),
    () => null,
    () => random.chance(0.5),
    () => [],
    () => ({}),
    () => Array(20).fill(hostileNumber(random)),
    () => nested(random.pick([10, 2000])),
  ])();
}

/** Objects within objects; JSON.stringify takes some thousands. */
function nested(depth: number): unknown {
  let value: unknown = 1;
  for (; depth > 0; depth--) value = { a: value };
  return value;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

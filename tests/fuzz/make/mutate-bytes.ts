import { hostileText, numberText } from './hostile.ts';
import type { Random } from './random.ts';

const MOST_BYTES = 400_000;

/** A sound file made unsound, in one to four places. */
export function mutateBytes(bytes: Uint8Array, random: Random): Uint8Array {
  let mutated = bytes;
  for (let times = 1 + random.below(4); times > 0; times--)
    mutated = random.pick(WAYS)(mutated, random).slice(0, MOST_BYTES);
  return mutated;
}

type Way = (bytes: Uint8Array, random: Random) => Uint8Array;

const WAYS: readonly Way[] = [
  function flipBits(bytes, random) {
    const flipped = Uint8Array.from(bytes);
    for (let times = 1 + random.below(6); times > 0 && flipped.length > 0; times--)
      flipped[random.below(flipped.length)]! ^= 1 << random.below(8);
    return flipped;
  },
  function setByte(bytes, random) {
    const set = Uint8Array.from(bytes);
    if (set.length > 0) set[random.below(set.length)] = random.pick([0, 9, 10, 34, 60, 127, 128, 255]);
    return set;
  },
  (bytes, random) => bytes.slice(0, random.below(bytes.length + 1)),
  function cutOut(bytes, random) {
    const [from, to] = spanOf(bytes, random);
    return joined(bytes.slice(0, from), bytes.slice(to));
  },
  function double(bytes, random) {
    const [from, to] = spanOf(bytes, random);
    return joined(bytes.slice(0, to), bytes.slice(from));
  },
  function repeatMany(bytes, random) {
    const from = random.below(bytes.length + 1);
    const part = bytes.slice(from, from + 1 + random.below(40));
    return joined(
      bytes.slice(0, from),
      ...Array<Uint8Array>(random.below(500)).fill(part),
      bytes.slice(from),
    );
  },
  function splice(bytes, random) {
    const [from, to] = spanOf(bytes, random);
    const at = random.below(bytes.length + 1);
    return joined(bytes.slice(0, at), bytes.slice(from, to), bytes.slice(at));
  },
  function putText(bytes, random) {
    const at = random.below(bytes.length + 1);
    const text = random.chance(0.5) ? hostileText(random) : numberText(random);
    return joined(bytes.slice(0, at), new TextEncoder().encode(text), bytes.slice(at));
  },
  function putNumber(bytes, random) {
    const text = new TextDecoder('latin1').decode(bytes);
    const numbers = [...text.matchAll(/\d+(?:\.\d+)?/g)];
    if (numbers.length === 0) return bytes;
    const found = random.pick(numbers);
    const to = found.index + found[0].length;
    return joined(bytes.slice(0, found.index), new TextEncoder().encode(numberText(random)), bytes.slice(to));
  },
];

function spanOf(bytes: Uint8Array, random: Random): [number, number] {
  const from = random.below(bytes.length + 1);
  const most = random.pick([4, 40, 400, bytes.length]);
  return [from, Math.min(bytes.length, from + random.below(most + 1))];
}

function joined(...parts: readonly Uint8Array[]): Uint8Array {
  return Uint8Array.from(Buffer.concat(parts));
}

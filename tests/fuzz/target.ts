import type { Random } from './make/random.ts';

/** One reader, or one promise of the program, under attack. */
export interface Target {
  readonly name: string;
  /** how often it is tried beside the others; 1 where a try costs milliseconds */
  readonly weight: number;
  /** An input: the same for the same random numbers. */
  make(random: Random): Uint8Array;
  /** What is wrong with how it is taken, as a sentence; undefined where all is as promised. What it throws is wrong, too. */
  check(input: Uint8Array): Promise<string | undefined> | string | undefined;
}

const encoder = new TextEncoder();
const decoder = new TextDecoder();

/** A target whose inputs are plain JSON: texts keep their lone surrogates, and a kept input can be read. */
export function jsonTarget<T>(target: {
  readonly name: string;
  readonly weight: number;
  make(random: Random): T;
  check(input: T): Promise<string | undefined> | string | undefined;
}): Target {
  return {
    ...target,
    make: (random) => encoder.encode(JSON.stringify(target.make(random))),
    check: (input) => target.check(JSON.parse(decoder.decode(input)) as T),
  };
}

import { mutateJson } from '../make/mutate-json.ts';
import { type Random, randomFrom } from '../make/random.ts';
import { faultInShown } from '../promises.ts';
import { jsonTarget } from '../target.ts';
import { type Asked, openProgram, type Program } from './program.ts';

let opened: Promise<Program> | undefined;

/** One program for all that ask of it. */
export const program = (): Promise<Program> => {
  opened ??= openProgram();
  return opened;
};

/** Which sound request is changed, and by which random numbers: tokens differ from run to run. */
export interface Mutation {
  readonly which: number;
  readonly seed: number;
}

export const mutation = (random: Random): Mutation => ({
  which: random.below(2 ** 20),
  seed: random.below(2 ** 31),
});

export function mutated(sound: readonly Asked[], { which, seed }: Mutation): Asked {
  const [name, request] = sound[which % sound.length]!;
  return [name, mutateJson(request, randomFrom(seed))];
}

/** Each call with a changed request, through the one door behind both hosts. */
export const calls = jsonTarget<Mutation>({
  name: 'calls',
  weight: 4,
  make: mutation,
  async check(asked) {
    const { dispatch, logged, sound, open } = await program();
    const [name, request] = mutated(sound(), asked);
    const controller = new AbortController();
    const answer = dispatch(name, request, { onProgress: () => {}, signal: controller.signal });
    // these end when nobody waits any more, and nothing is asked of a server
    if (name === 'watch' || name === 'fetchMap') controller.abort();
    const reply = await answer;
    if (name === 'openMap') await open();
    const inside = logged.splice(0).map(String);
    if (inside.length > 0) return `went wrong inside: ${inside.join('; ')}`;
    return reply.ok ? undefined : faultInShown([reply.error.message]);
  },
});

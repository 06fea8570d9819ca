import { fail, type Problem, type Result } from '../result.ts';

/** Leaves a decoder from deep inside its loops; turned into a Result at the decoder's door. */
export class Refusal extends Error {
  readonly problem: Problem;
  constructor(code: string, message: string) {
    super(message);
    this.problem = { code, message };
  }
}

/** Runs a decoder and turns its refusal into a Result; a programmer's mistake goes on as it was. */
export function orRefusal<T>(work: () => Result<T>): Result<T> {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof Refusal) return fail(thrown.problem.code, thrown.problem.message);
    throw thrown;
  }
}

import type { Problem } from '../result.ts';

/** Leaves a decoder from deep inside its loops; turned into a Result by whoever opened the file. */
export class Refusal extends Error {
  readonly problem: Problem;
  constructor(code: string, message: string) {
    super(message);
    this.problem = { code, message };
  }
}

import type { z } from 'zod';
import { fail, type Result } from '../geo/result.ts';
import { printable } from '../geo/units/text.ts';
import { CALLS, type CallName, type ProgressOf, type RequestOf, type ValueOf } from './contract/calls.ts';
import type { Reply } from './contract/reply.ts';
import { sayRequestFault } from './say-request-fault.ts';
import { isProgramReplaced, PROGRAM_REPLACED } from './services/program-replaced.ts';

/** What a call may use besides its request. */
export interface CallHooks<P = unknown> {
  onProgress(progress: P): void;
  /** fires when the page no longer wants the answer, or is gone */
  readonly signal: AbortSignal;
}

/** One function for every call of the contract. */
export type Services = {
  readonly [K in CallName]: (
    request: RequestOf<K>,
    hooks: CallHooks<ProgressOf<K>>,
  ) => Promise<Result<ValueOf<K>>>;
};

/** The one door for every host. Never throws, never rejects. */
export type Dispatch = (name: unknown, request: unknown, hooks: CallHooks) => Promise<Reply>;

/**
 * @param log takes what went wrong inside; the page is told only that something did
 */
export function createDispatch(services: Services, log: (error: unknown) => void): Dispatch {
  return async (name, request, hooks) => {
    if (!isCallName(name))
      return fail('unknown-call', 'The program was asked for something it does not know.');
    try {
      const schema: z.ZodType = CALLS[name].request;
      const parsed = schema.safeParse(request);
      if (!parsed.success) return safe(fail('bad-request', describe(parsed.error.issues, request)));
      // the table ties each name to its own request, just parsed
      const handler = services[name] as (request: unknown, hooks: CallHooks) => Promise<Result<unknown>>;
      return safe(await handler(parsed.data, hooks));
    } catch (error) {
      log(error);
      if (isProgramReplaced(error)) return PROGRAM_REPLACED;
      return fail('internal', 'Something went wrong inside the program. Nothing was changed; try again.');
    }
  };
}

/** A refusal's sentence may quote anything from a file. */
function safe(result: Result<unknown>): Result<unknown> {
  return result.ok ? result : fail(result.error.code, printable(result.error.message));
}

function isCallName(name: unknown): name is CallName {
  return typeof name === 'string' && Object.hasOwn(CALLS, name);
}

function describe(issues: readonly z.core.$ZodIssue[], request: unknown): string {
  const said = issues.slice(0, 5).map((issue) => sayRequestFault(issue, request));
  const more = issues.length > said.length ? `; and ${issues.length - said.length} more` : '';
  return `This cannot be used: ${said.join('; ')}${more}.`;
}

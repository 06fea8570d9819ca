import { fail } from '../../geo/result.ts';
import type { Services } from '../dispatch.ts';

/** The window's calls about fetching maps. */
export function fetchCalls(): Pick<Services, 'planFetch' | 'fetchMap'> {
  const none = async () => fail('fetch.none', 'Nothing can be fetched yet.');
  return { planFetch: none, fetchMap: none };
}

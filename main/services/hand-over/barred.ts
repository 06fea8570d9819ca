import { fail } from '../../../geo/result.ts';

/** What is barred is handed over only where that is asked for once more. */
export const BARRED = fail('hand-over.barred', 'Something on this drive bars this vehicle.');

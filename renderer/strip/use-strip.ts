import { useSignal, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Strip } from '../../geo/drive/strip/strip.ts';
import { given } from '../../geo/given.ts';
import { ask } from '../host/ask.ts';
import { firstTold } from '../state/first-told.ts';
import { countryUsed, openedDrive } from '../state/opened.ts';

/** The open drive unrolled, or why it cannot be; neither while the host is still at it. */
interface StripAnswer {
  readonly strip: Strip | undefined;
  readonly problem: string | undefined;
}

const NOTHING: StripAnswer = { strip: undefined, problem: undefined };

/** Asks for the strip of the drive that is open, anew with every other drive. */
export function useStrip(): StripAnswer {
  const answer = useSignal(NOTHING);
  const answeredId = useRef<string | undefined>(undefined);
  useSignalEffect(() => {
    const driveId = openedDrive.value?.followed.driveId;
    const country = countryUsed.value;
    if (driveId === undefined) return;
    // one drive's findings must not stand on another's road
    if (answeredId.current !== driveId) answer.value = NOTHING;
    const stop = new AbortController();
    const asked = firstTold.then(() =>
      ask('strip', { driveId, ...given({ country }) }, { signal: stop.signal }),
    );
    void asked.then((reply) => {
      if (stop.signal.aborted) return;
      answer.value = reply.ok
        ? { strip: reply.value, problem: undefined }
        : { strip: undefined, problem: reply.error.message };
      answeredId.current = driveId;
    });
    return () => stop.abort();
  });
  return answer.value;
}

import { useEffect, useState } from 'preact/hooks';
import { sayPlates } from '../../geo/load/weigh/say-plates.ts';
import { sumsOf } from '../../geo/load/weigh/sums.ts';
import { held, weighed } from './state/state.ts';

/** A held arrow is told once it rests. */
const REST_MS = 500;

/** Tells a screen reader what is left on each plate once a change has come to rest. */
export function LoadAnnouncer() {
  const [said, setSaid] = useState('');
  const found = held.value ? undefined : weighed.value;
  const now =
    found === undefined ? said : found.ok ? `${sayPlates(sumsOf(found.value))}.` : found.error.message;
  useEffect(() => {
    const timer = setTimeout(() => setSaid(now), REST_MS);
    return () => clearTimeout(timer);
  }, [now]);
  return (
    <div class="unseen" role="status" data-testid="load-announcer">
      {said}
    </div>
  );
}

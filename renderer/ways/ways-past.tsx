import './ways.css';
import type { Finding } from '../../geo/report/report.ts';
import { select } from '../actions/choose.ts';
import { findWays } from '../actions/ways.ts';
import { later } from '../look/later.tsx';
import { report } from '../state/check.ts';
import { ways } from '../state/ways.ts';

const WaysAnswer = later(async () => (await import('./ways-answer.tsx')).WaysAnswer);

/** In an opened finding: the button that looks for ways past it, and what came of it. What may be driven has none. */
export function WaysPast({ finding: { id, level } }: { finding: Finding }) {
  if (level === 'care') return null;
  return (
    <section class="ways-past" aria-label="Ways round">
      {ways.value?.past === id ? (
        <WaysAnswer />
      ) : (
        <button type="button" class={level === 'barred' ? 'chief' : ''} onClick={() => findWays(id)}>
          Way round
        </button>
      )}
    </section>
  );
}

/** Beside a closed row of what bars: opens it and looks for ways past it. */
export function WayRoundOfRow({ id, name }: { id: string; name: string }) {
  return (
    <button
      type="button"
      class="row-way"
      onClick={() => {
        select(id);
        void findWays(id);
      }}
    >
      Way round<span class="unseen">: {name}</span>
    </button>
  );
}

/** Beside the verdict of a drive that something bars: ways past all of it at once. */
export function WaysPastAll() {
  const barred = report.value?.findings.filter(({ level }) => level === 'barred').length ?? 0;
  const shown = ways.value;
  if (barred === 0) return null;
  return (
    <section class="ways-past" aria-label="Ways past all of it">
      {shown && shown.past === undefined ? (
        <WaysAnswer />
      ) : (
        <button type="button" onClick={() => findWays()}>
          {barred === 1 ? 'Ways past it' : 'Ways past all of it'}
        </button>
      )}
    </section>
  );
}

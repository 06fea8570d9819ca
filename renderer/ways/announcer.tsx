import { sayWaysFound } from '../../geo/report/ways/say-way.ts';
import { waysByBar } from '../../geo/report/ways/ways-by-bar.ts';
import { findings } from '../state/check.ts';
import { settings } from '../state/kept.ts';
import { type WaysAsked, ways } from '../state/ways.ts';
import { findingsOf, namePastAll } from './place-words.ts';

/** Tells a screen reader what came of looking for ways. */
export function WaysAnnouncer() {
  return (
    <p class="unseen" role="status" data-testid="ways-announcer">
      {ways.value && sayFound(ways.value)}
    </p>
  );
}

function sayFound({ past, found }: WaysAsked): string {
  if (!found) return '';
  const { units } = settings.value;
  const name = (ids: readonly string[]) => namePastAll(findingsOf(ids, findings.value, past), units);
  return [
    ...waysByBar(found.waysRound).map((bar) =>
      sayWaysFound(
        bar.ways.map(({ way }) => way),
        name(bar.findingIds),
        units,
      ),
    ),
    ...found.noWayRound.map(({ findingIds, why }) => `No way past ${name(findingIds)}. ${why}`),
  ].join(' ');
}

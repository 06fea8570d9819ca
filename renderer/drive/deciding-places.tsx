import { sumOf } from '../../geo/report/deciding.ts';
import { namePlace } from '../../geo/report/name-place.ts';
import type { Finding } from '../../geo/report/report.ts';
import { decidingPlaces } from '../../geo/report/verdict.ts';
import { capital, clip } from '../../geo/units/text.ts';
import { goTo } from '../actions/choose.ts';
import { LevelMark } from '../look/level-mark.tsx';
import { report } from '../state/check.ts';
import { settings } from '../state/kept.ts';
import { shownLevels } from '../state/shown.ts';

/** So many places stand under the verdict; the others are in the list. */
const SHOWN = { barred: 5, tight: 3, unknown: 3 } as const;

/** The places that made the verdict, by kilometre and name: each opens its row and shows it on map and strip. */
export function DecidingPlaces() {
  const shown = report.value;
  if (!shown) return null;
  const { verdict } = shown;
  const places = decidingPlaces(shown.findings, verdict);
  if (places.length === 0 || verdict === 'clear') return null;
  const most = verdict === 'care' ? 0 : SHOWN[verdict];
  const more = places.length - most;
  return (
    <ol class="deciding" aria-label="The places that decide">
      {places.slice(0, most).map((finding) => (
        <li key={finding.id}>
          <PlaceButton finding={finding} />
        </li>
      ))}
      {more > 0 && (
        <li>
          <button
            type="button"
            class="quiet small"
            onClick={() => {
              shownLevels.value = new Set([verdict]);
            }}
          >
            and {more} more: show only these
          </button>
        </li>
      )}
    </ol>
  );
}

function PlaceButton({ finding }: { finding: Finding }) {
  const { subject, figure, road, at } = namePlace(finding, settings.value.units);
  return (
    <button type="button" class="deciding-place" onClick={() => goTo(finding.id)}>
      <LevelMark level={finding.level} size={20} />
      <b>{at}</b>
      <span>{capital(subject)}</span>
      <span class="deciding-road soft">
        <bdi>{road ?? sayUnnamed(finding)}</bdi>
      </span>
      <b class={`level-${finding.level}`}>{figure}</b>
    </button>
  );
}

/** What is there, where the road has no name: the limit, whose sum stands beside it, or the finding's own words. */
function sayUnnamed(finding: Finding): string {
  const sum = sumOf(finding, settings.value.units);
  return sum ? `limit ${sum.limit}, road without a name` : clip(finding.say, 80);
}

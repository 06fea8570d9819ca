import { distanceIn } from '../../geo/units/in-units.ts';
import { clip, counted } from '../../geo/units/text.ts';
import type { MapChanges } from '../../main/contract/map-changes.ts';
import { LevelMark } from '../look/level-mark.tsx';
import { settings } from '../state/kept.ts';
import { mapChanges } from '../state/shelf.ts';

/** What the map that took another's place says otherwise of the drives opened before. */
export function Changes() {
  const { drives, vehicle } = mapChanges.value;
  if (drives.length === 0) return null;
  return (
    <section class="shelf-changes" aria-labelledby="shelf-changes">
      <h3 id="shelf-changes">
        What the new map changed for <bdi>{clip(vehicle, 60)}</bdi>
      </h3>
      {drives.map((drive, i) => (
        <ChangedDrive key={`${i} ${drive.name}`} drive={drive} />
      ))}
    </section>
  );
}

function ChangedDrive({ drive: { name, say, differences } }: { drive: MapChanges['drives'][number] }) {
  return (
    <details open={differences.length > 0}>
      <summary>
        <bdi>{clip(name, 80)}</bdi>:{' '}
        {differences.length === 0 ? 'nothing' : counted(differences.length, 'change')}
      </summary>
      <p class="small soft">
        <bdi>{clip(say, 400)}</bdi>
      </p>
      <ul>
        {differences.map((each, i) => (
          <li key={`${i} ${each.fromM}`} class="shelf-change">
            <span>{distanceIn(settings.value.units, each.fromM)}</span>
            {each.level ? <LevelMark level={each.level} size={16} /> : <span />}
            <bdi>{clip(each.say, 300)}</bdi>
          </li>
        ))}
      </ul>
    </details>
  );
}

import type { NoWayRound } from '../../geo/report/way-round.ts';
import { clip } from '../../geo/units/text.ts';
import { isFile } from '../actions/wanted.ts';
import { fetchRoundAbout, readMore } from '../actions/ways.ts';
import { openedMap } from '../state/opened.ts';
import { type WaysFound, ways } from '../state/ways.ts';

interface Props {
  readonly none: NoWayRound;
  readonly wider: WaysFound['wider'];
}

/** Why there is no way, and what would have to give; where the map ends, how to get more of it. */
export function NoWay({ none, wider }: Props) {
  const { kind, why } = none;
  return (
    <div class="no-way">
      <p>
        <b>No way round.</b> {clip(why, 600)}
      </p>
      {kind === 'edge of the map' && <Wider wider={wider} />}
    </div>
  );
}

/** Of a file that was read about the drive alone the rest may hold a way; else more is to be fetched. */
function Wider({ wider }: Pick<Props, 'wider'>) {
  const map = openedMap.value;
  if (map?.about && isFile(map.source))
    return (
      <p>
        <button type="button" onClick={() => readMore(ways.peek()?.past)}>
          Read the whole map and look again
        </button>
      </p>
    );
  if (wider === 'none') return null;
  return (
    <p>
      <button type="button" aria-haspopup="dialog" onClick={() => fetchRoundAbout()}>
        Fetch the map round about…
      </button>
    </p>
  );
}

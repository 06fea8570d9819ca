import type { NoWayRound } from '../../geo/report/way-round.ts';
import { clip } from '../../geo/units/text.ts';
import { fetchRoundAbout, readMore } from '../actions/ways.ts';
import { type WaysFound, ways } from '../state/ways.ts';

interface Props {
  readonly none: NoWayRound;
  readonly wider: WaysFound['wider'];
}

/** Why there is no way, and what would have to give; where the map ends, how to get more of it. */
export function NoWay({ none, wider }: Props) {
  const { kind, why, gives = [] } = none;
  return (
    <div class="no-way">
      <p>
        <b>No way round.</b> {clip(why, 600)}
      </p>
      {gives.length > 0 && (
        <>
          <p class="small">What would have to give:</p>
          <ul class="no-way-gives small">
            {gives.map(({ say }) => (
              <li key={say}>{clip(say, 300)}</li>
            ))}
          </ul>
        </>
      )}
      {kind === 'edge of the map' && <Wider wider={wider} />}
    </div>
  );
}

function Wider({ wider }: Pick<Props, 'wider'>) {
  if (wider === 'none') return null;
  if (wider === 'read')
    return (
      <p>
        <button type="button" onClick={() => readMore(ways.peek()?.past)}>
          Read more of the map and look again
        </button>
      </p>
    );
  return (
    <p>
      <button type="button" aria-haspopup="dialog" onClick={() => fetchRoundAbout()}>
        Fetch the map round about…
      </button>
    </p>
  );
}

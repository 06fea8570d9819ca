import { given } from '../../geo/given.ts';
import type { Doing as Work } from '../state/happening.ts';
import { sayLeft } from './say-left.ts';

/** Long work under way: what, how far, how long still, and the way to stop it. @param more pieces that wait for it */
export function Doing({ doing, more = 0 }: { doing: Work; more?: number }) {
  const { what, share, secondsLeft, stop } = doing;
  return (
    <div class="doing small">
      <span class="doing-what">
        <bdi>{what}</bdi>
        {more > 0 && `, ${more} more to do`}
      </span>
      <progress aria-label={what} {...given({ value: share })} />
      <span class="mono percent">{share === undefined ? '' : `${Math.floor(share * 100)} %`}</span>
      {secondsLeft !== undefined && <span class="doing-left soft">{sayLeft(secondsLeft)}</span>}
      <button type="button" onClick={stop}>
        Cancel<span class="unseen">: {what}</span>
      </button>
    </div>
  );
}

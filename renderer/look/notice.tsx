import { clip } from '../../geo/units/text.ts';
import { hostGone, notice, type Told } from '../state/happening.ts';

/**
 * What went wrong or should be known, over the view's foot, until it is closed. The two areas are always there, so that
 * both are read out.
 */
export function NoticeArea() {
  const told = notice.value;
  const gone = hostGone.value;
  const error = gone ?? (told?.kind === 'error' ? told.say : undefined);
  return (
    <div class="notice-area">
      <div role="alert">
        {error !== undefined && (
          <Notice
            say={error}
            kind="error"
            canClose={gone === undefined}
            again={gone === undefined ? told?.again : undefined}
            offers={gone === undefined ? told?.offers : undefined}
          />
        )}
      </div>
      <div role="status">
        {gone === undefined && told?.kind === 'note' && (
          <Notice say={told.say} kind="note" canClose offers={told.offers} />
        )}
      </div>
    </div>
  );
}

function Notice({
  say,
  kind,
  canClose,
  again,
  offers = [],
}: {
  say: string;
  kind: 'error' | 'note';
  canClose: boolean;
  again?: (() => void) | undefined;
  offers?: Told['offers'] | undefined;
}) {
  return (
    <div class={`notice notice-${kind}`}>
      <p>
        <bdi>{clip(say, 800)}</bdi>
      </p>
      {again && (
        <button
          type="button"
          onClick={() => {
            close();
            again();
          }}
        >
          Try again
        </button>
      )}
      {offers.map((offer, i) => (
        <button
          key={`${i} ${offer.say}`}
          type="button"
          onClick={() => {
            close();
            offer.act();
          }}
        >
          {offer.say}
        </button>
      ))}
      {canClose && (
        <button type="button" onClick={close}>
          Close<span class="unseen"> this message</span>
        </button>
      )}
    </div>
  );
}

function close(): void {
  notice.value = undefined;
}

import { clip } from './drive/words.ts';
import { putMessageAway } from './state/actions.ts';
import { message } from './state/state.ts';
import { hostGone } from './state/ui.ts';

/** What went wrong or should be known, over the map's foot, until put away. The places are always there, so that both are read out. */
export function Message() {
  const told = message.value;
  const gone = hostGone.value;
  const error = gone ?? (told?.kind === 'error' ? told.say : undefined);
  return (
    <div class="message-place">
      <div role="alert">
        {error !== undefined && <Said say={error} kind="error" canGo={gone === undefined} />}
      </div>
      <div role="status">
        {gone === undefined && told?.kind === 'notice' && <Said say={told.say} kind="notice" canGo />}
      </div>
    </div>
  );
}

function Said({ say, kind, canGo }: { say: string; kind: 'error' | 'notice'; canGo: boolean }) {
  return (
    <div class={`message message-${kind}`}>
      <p>
        <bdi>{clip(say, 800)}</bdi>
      </p>
      {canGo && (
        <button type="button" onClick={putMessageAway}>
          Put away
        </button>
      )}
    </div>
  );
}

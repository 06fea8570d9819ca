import type { Answer } from '../../../geo/load/ask/ask-about.ts';
import type { Question } from '../../../geo/load/ask/question.ts';
import { answerLevel, sayAnswer, sayMost } from '../../../geo/load/ask/say-answer.ts';
import { sayNoRoom } from '../../../geo/load/cure/say-cure.ts';
import { sayDoubt } from '../../../geo/load/doubts/say-doubt.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import type { LoadLevel } from '../../../geo/load/weigh/load-level.ts';
import { kgText, LIMIT_NAME, sayShare, sumText } from '../../../geo/load/weigh/say-plates.ts';
import { decidingOf } from '../../../geo/load/weigh/sums.ts';
import { clip } from '../../../geo/units/text.ts';
import { settings } from '../../state/kept.ts';
import { CureList } from '../panel/cures.tsx';
import { focusIfLost } from '../state/keep-focus.ts';
import { change } from '../state/state.ts';
import { answer, endQuestion, question } from './ask-state.ts';

/** Yes or no in kilograms, the most that can still be added there, and what to do where it is too much. */
export function AskAnswer() {
  const [found, asks] = [answer.value, question.value];
  if (!found || !asks) return null;
  if (!found.ok) return <p class="problem">{found.error.message}</p>;
  const told = found.value;
  const { fits, cures, items } = told;
  const what = sayWhat(told, asks);
  const take = (next: readonly LoadItem[], did: string) => {
    change(next, did);
    leave();
  };
  return (
    <>
      <Told told={told} />
      {!fits && (
        <CureList
          cures={cures}
          say="Take it and do this"
          none={sayNoRoom(cures)}
          take={(cured, did) => take(cured, `put aboard ${what}, ${did}`)}
        />
      )}
      <p class="load-ask-buttons">
        <button type="button" class={fits ? 'chief' : ''} onClick={() => take(items, `put aboard ${what}`)}>
          {fits ? 'Put aboard' : 'Put aboard all the same'}
        </button>{' '}
        <button type="button" onClick={leave}>
          No, leave it
        </button>
      </p>
    </>
  );
}

const TONE: Readonly<Record<LoadLevel, string>> = {
  over: ' level-barred',
  tight: ' level-tight',
  within: '',
};

/** The answer in words. */
function Told({ told }: { told: Answer }) {
  const { result, pieces, change: share, doubts } = told;
  const { loadMarginKg: marginKg } = settings.value;
  const first = decidingOf(result);
  const totalKg = pieces.reduce((sum, { massKg }) => sum + massKg, 0);
  return (
    <div role="status">
      <p class={`load-answer${TONE[answerLevel(told, marginKg)]}`}>{sayAnswer(told, marginKg)}</p>
      <p>
        {kgText(totalKg)} there: {sayShare(share)};{' '}
        <span class="load-sum">
          {LIMIT_NAME[first.limit]} {sumText(first)}.
        </span>
      </p>
      <p>{sayMost(told)}</p>
      {doubts
        .map((doubt) => sayDoubt(doubt, settings.value.units))
        .map((said) => (
          <p key={said} class="load-ask-doubt">
            {clip(said, 300)}
          </p>
        ))}
    </div>
  );
}

function sayWhat({ pieces }: Answer, { one }: Question): string {
  return `${pieces.length > 1 ? `${pieces.length} × ` : ''}${clip(one.name, 60)}`;
}

function leave(): void {
  endQuestion();
  focusIfLost('load-ask-what');
}

import { LIMIT_NAME } from '../../../geo/load/say-load.ts';
import {
  decidingOf,
  kgText,
  LIMIT_SAID,
  sayPlate,
  sayShare,
  sumsOf,
  sumText,
} from '../../../geo/load/weigh/say-plates.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { clip } from '../../drive/words.ts';
import { CureList } from '../panel/cures.tsx';
import { focusIfLost } from '../state/keep-focus.ts';
import { change } from '../state/state.ts';
import { answer, question } from './ask-state.ts';

/** Yes or no in kilograms, the most that can still be added there, and what to do where it is too much. */
export function AskAnswer({ card, close }: { card: VehicleCard; close(): void }) {
  const [found, asks] = [answer.value, question.value];
  if (!found || !asks) return null;
  if (!found.ok) return <p class="problem">{found.error.message}</p>;
  const { result, doubts, change: shares, most, cures, items, pieces } = found.value;
  const first = decidingOf(result);
  const over = sumsOf(result).filter((sum) => sum.over);
  const no = over.length > 0 || cures.cures.length > 0;
  const what = `${pieces.length > 1 ? `${pieces.length} × ` : ''}${clip(asks.one.name, 60)}`;
  const totalKg = pieces.reduce((sum, { massKg }) => sum + massKg, 0);
  const leave = () => {
    close();
    focusIfLost('load-ask-what');
  };
  const takeIn = (next: typeof items, did: string) => {
    change(next, did);
    leave();
  };

  return (
    <>
      <div role="status">
        <p class={`load-answer level-${no ? 'barred' : 'care'}`}>
          {no ? 'Not like this: ' : 'Yes: '}
          {(over.length > 0 ? over : [first]).map(sayPlate).join(', ')}.
        </p>
        <p>
          {kgText(totalKg)} there: {sayShare(shares)};{' '}
          <span class="load-sum">
            {LIMIT_NAME[first.limit]} {sumText(first)}.
          </span>
        </p>
        <p>
          {most.massKg < 0.5
            ? `Nothing more can be added there as things are: the ${LIMIT_SAID[most.binds]} binds.`
            : `At most ${kgText(most.massKg, 'down')} can be added there as things are; then the ${LIMIT_SAID[most.binds]} binds.`}
          {most.handbookKg !== undefined &&
            ` From ${kgText(most.handbookKg, 'down')} less than 40 % stand on the front axle.`}
        </p>
        {doubts.map((each) => (
          <p key={each} class="load-ask-doubt">
            {clip(each, 300)}
          </p>
        ))}
      </div>
      {no && (
        <CureList
          card={card}
          cures={cures}
          say="Take it and do this"
          none="No few steps make room for it: leave it, or begin with what is over already."
          take={(cured, did) => takeIn(cured, `put aboard ${what}, ${did}`)}
        />
      )}
      <p class="load-ask-buttons">
        <button type="button" class={no ? '' : 'chief'} onClick={() => takeIn(items, `put aboard ${what}`)}>
          {no ? 'Put aboard all the same' : 'Put aboard'}
        </button>{' '}
        <button type="button" onClick={leave}>
          No, leave it
        </button>
      </p>
    </>
  );
}

import { signal } from '@preact/signals';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import {
  levelsOf,
  overStops,
  STOP_KINDS,
  type Stop,
  type StopKind,
} from '../../../geo/load/tanks/on-the-way.ts';
import { STOP_SAID, sayLevels } from '../../../geo/load/tanks/say-tanks.ts';
import type { LoadFigures } from '../../../geo/load/weigh/figures.ts';
import type { LoadCard } from '../../../geo/load/weigh/load-card.ts';
import { type LoadLevel, loadLevel } from '../../../geo/load/weigh/load-level.ts';
import { sayPlate } from '../../../geo/load/weigh/say-plates.ts';
import { decidingOf } from '../../../geo/load/weigh/sums.ts';
import { weigh } from '../../../geo/load/weigh/weigh.ts';
import { settings } from '../../state/kept.ts';

/** More in a day is nobody's plan. */
const STOPS_MOST = 12;
/** What is done with the tanks over the day, in its order; begins with the usual course. */
const stops = signal<readonly StopKind[]>(STOP_KINDS);

const TONE: Readonly<Record<LoadLevel, string>> = { over: 'level-barred', tight: 'level-tight', within: '' };

/** The tanks over the stops of the day: what each holds then, and what is left on the plate that decides. */
export function DayStops({ card, items }: { card: LoadCard; items: readonly LoadItem[] }) {
  const start = weigh(card, items);
  if (!start.ok) return null;
  const levels = levelsOf(card, items);
  const full = stops.value.length >= STOPS_MOST;
  return (
    <section class="load-stops" aria-label="The tanks over the day">
      <h4>Over the stops of the day</h4>
      <ol>
        <li class="load-stop">
          <StopTold say="Leaving" levels={levels} result={start.value} />
        </li>
        {overStops(card, items, stops.value).map((stop, index) => (
          <li key={String(index)} class="load-stop">
            <StopTold say={STOP_SAID[stop.kind]} {...stop} />
            <button
              type="button"
              class="quiet"
              aria-label={`Strike out stop ${index + 1}: ${STOP_SAID[stop.kind]}`}
              onClick={() => {
                stops.value = stops.peek().filter((_, i) => i !== index);
              }}
            >
              Strike out
            </button>
          </li>
        ))}
      </ol>
      <p class="load-stops-more">
        <span class="small soft">Then</span>
        {STOP_KINDS.map((kind) => (
          <button
            key={kind}
            type="button"
            disabled={full}
            onClick={() => {
              stops.value = [...stops.peek(), kind];
            }}
          >
            {STOP_SAID[kind]}
          </button>
        ))}
      </p>
    </section>
  );
}

function StopTold({ say, levels, result }: { say: string; levels: Stop['levels']; result: LoadFigures }) {
  const level = loadLevel(result, settings.value.loadMarginKg);
  return (
    <>
      <span>{say}</span>
      <b class={TONE[level]}>{sayPlate(decidingOf(result))}</b>
      <span class="small soft">{sayLevels(levels)}</span>
    </>
  );
}

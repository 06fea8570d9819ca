import '../hand-over.css';
import { useEffect, useRef, useState } from 'preact/hooks';
import { counted } from '../../../geo/units/text.ts';
import { Doing } from '../../look/doing.tsx';
import { pairsWanted } from '../../state/sheet-wanted.ts';
import { Done } from '../done.tsx';
import { NoTelephone } from '../no-telephone.tsx';
import { type Handed, keptSheet } from '../work.ts';
import { Barred, Failed, HandedOver, Waiting } from './pair-lists.tsx';
import { handOverAll, keyOf, pairDoing, pairsTold } from './pairs-work.ts';

/** Hands over drives of the library: how far it is, what is barred, what could not be, and what was handed over. */
export function HandOverPairs() {
  const pairs = pairsWanted.value;
  const running = useRef<AbortController | undefined>(undefined);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const [shown, setShown] = useState<Handed | undefined>(undefined);
  const begin = async (of: typeof pairs, evenBarred: boolean) => {
    const stop = new AbortController();
    running.current = stop;
    setProblem(await handOverAll(of, evenBarred, stop.signal));
    if (pairs.length === 1 && !stop.signal.aborted) await show(numberOf(pairs[0]));
  };
  const show = async (number: string | undefined) => {
    if (number === undefined) return;
    const kept = await keptSheet(number);
    if (kept.kind === 'done') setShown(kept.handed);
    else if (kept.kind === 'problem') setProblem(kept.say);
  };
  useEffect(() => {
    pairsTold.value = new Map();
    void begin(pairs, false);
    return () => running.current?.abort();
  }, []);
  if (shown !== undefined)
    return (
      <div class="handing">
        {pairs.length > 1 && (
          <p>
            <button type="button" onClick={() => setShown(undefined)}>
              Back to the list
            </button>
          </p>
        )}
        <Done handed={shown} />
      </div>
    );
  const busy = pairDoing.value !== undefined;
  const told = pairs.filter((pair) => pairsTold.value.has(keyOf(pair))).length;
  return (
    <div class="handing">
      <div role="status">
        {busy ? (
          <Doing
            doing={{
              what: sayDoing(told),
              share: told / pairs.length,
              stop: () => running.current?.abort(),
            }}
          />
        ) : (
          <p>{sayTold()}</p>
        )}
      </div>
      <NoTelephone />
      <div role="alert">{problem !== undefined && <p class="problem">{problem}</p>}</div>
      {!busy && <Barred onYes={(of) => void begin(of, true)} />}
      {!busy && <Failed onAgain={(of) => void begin(of, false)} />}
      {!busy && <Waiting onGoOn={(of) => void begin(of, false)} />}
      <HandedOver busy={busy} onShow={(number) => void show(number)} />
    </div>
  );
}

function numberOf(pair: Parameters<typeof keyOf>[0] | undefined): string | undefined {
  const said = pair && pairsTold.peek().get(keyOf(pair));
  return said?.kind === 'made' ? said.number : undefined;
}

function sayDoing(told: number): string {
  const pairs = pairsWanted.value;
  const doing = pairDoing.value;
  const pair = pairs.find((each) => keyOf(each) === doing?.key);
  const which = pairs.length === 1 ? '' : `${Math.min(pairs.length, told + 1)} of ${pairs.length}: `;
  const name = pair === undefined ? '' : `${pair.driveName}, ${pair.vehicleName}. `;
  return `${which}${name}${doing?.what ?? ''}…`;
}

function sayTold(): string {
  const all = [...pairsTold.value.values()];
  const count = (kind: (typeof all)[number]['kind']) => all.filter((each) => each.kind === kind).length;
  const [barred, failed] = [count('barred'), count('failed')];
  const made = count('made');
  const parts = [made === 0 ? 'Nothing was handed over' : `${counted(made, 'drive')} handed over`];
  if (barred > 0) parts.push(`${barred} barred and not handed over`);
  if (failed > 0) parts.push(`${failed} could not be handed over`);
  const left = pairsWanted.value.length - all.length;
  if (left > 0) parts.push(`stopped before ${left} more`);
  return `${parts.join('; ')}.`;
}

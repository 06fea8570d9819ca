import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { LEVEL_WORD } from '../../../geo/report/level.ts';
import { clip, counted } from '../../../geo/units/text.ts';
import { VerdictMark } from '../../look/level-mark.tsx';
import { type NamedPair, pairsWanted } from '../../state/sheet-wanted.ts';
import { keyOf, type PairSaid, pairsTold } from './pairs-work.ts';
import { savePairs } from './save-pairs.ts';

type Of<K extends PairSaid['kind']> = NamedPair & Extract<PairSaid, { kind: K }>;

/** The pairs of which this was said, in the order they were asked for. */
function those<K extends PairSaid['kind']>(kind: K): Of<K>[] {
  return pairsWanted.value.flatMap((pair) => {
    const said = pairsTold.value.get(keyOf(pair));
    return said?.kind === kind ? [{ ...pair, ...(said as Extract<PairSaid, { kind: K }>) }] : [];
  });
}

/** What is barred is handed over only after a word more, said of the drives that are listed. */
export function Barred({ onYes }: { onYes(of: readonly NamedPair[]): void }) {
  const barred = those('barred');
  if (barred.length === 0) return null;
  return (
    <section class="handing">
      <h3>Barred: not handed over</h3>
      <p class="problem">
        Something on {barred.length === 1 ? 'this drive' : 'each of these drives'} bars this vehicle. A sheet
        of it says “Do not drive” across its head.
      </p>
      <Pairs of={barred} />
      <p>
        <button type="button" onClick={() => onYes(barred)}>
          Hand {barred.length === 1 ? 'it' : `these ${barred.length}`} over even so
        </button>
      </p>
    </section>
  );
}

export function Failed({ onAgain }: { onAgain(of: readonly NamedPair[]): void }) {
  const failed = those('failed');
  if (failed.length === 0) return null;
  return (
    <section class="handing">
      <h3>Could not be handed over</h3>
      <Pairs of={failed} more={({ say }) => <p class="problem small">{say}</p>} />
      <p>
        <button type="button" onClick={() => onAgain(failed)}>
          Try {failed.length === 1 ? 'it' : `these ${failed.length}`} again
        </button>
      </p>
    </section>
  );
}

/** What it was stopped before. */
export function Waiting({ onGoOn }: { onGoOn(of: readonly NamedPair[]): void }) {
  const left = pairsWanted.value.filter((pair) => !pairsTold.value.has(keyOf(pair)));
  if (left.length === 0) return null;
  return (
    <p>
      <button type="button" onClick={() => onGoOn(left)}>
        Go on with the other {left.length}
      </button>
    </p>
  );
}

/** What was handed over, to be looked at and saved. */
export function HandedOver({ busy, onShow }: { busy: boolean; onShow(number: string): void }) {
  const made = those('made');
  if (made.length === 0) return null;
  return (
    <section class="handing">
      <h3>Handed over, and kept in the library</h3>
      {!busy && <SaveAll of={made} />}
      <Pairs
        of={made}
        more={({ number, verdict, replaces, say }) => (
          <>
            <span class="small">
              <VerdictMark verdict={verdict} size={16} /> {LEVEL_WORD[verdict]}; sheet{' '}
              <b class="mono">{number}</b>
              {replaces !== undefined && `, in the place of ${replaces}`}
            </span>
            {say.map((each) => (
              <p key={each} class="problem small">
                {each}
              </p>
            ))}
          </>
        )}
        act={({ number }) => (
          <button type="button" onClick={() => onShow(number)}>
            Show<span class="unseen"> sheet {number}</span>
          </button>
        )}
      />
    </section>
  );
}

function SaveAll({ of }: { of: readonly Of<'made'>[] }) {
  const [saving, setSaving] = useState<number | undefined>(undefined);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const stop = useRef(new AbortController());
  useEffect(() => () => stop.current.abort(), []);
  const save = async () => {
    setSaving(0);
    setProblem(await savePairs(of, { stop: stop.current.signal, onDone: setSaving }));
    setSaving(undefined);
  };
  return (
    <>
      <p>
        <button type="button" class="chief" disabled={saving !== undefined} onClick={() => void save()}>
          {saving === undefined
            ? `Save ${of.length === 1 ? 'it' : `all ${of.length}`}`
            : `Saving ${saving} of ${of.length}…`}
        </button>{' '}
        <span class="small soft">
          One archive with a folder for{' '}
          {of.length === 1 ? 'it' : `each of the ${counted(of.length, 'drive')}`}: sheet, phone page, visor
          card, GPX and lists.
        </span>
      </p>
      {problem !== undefined && <p class="problem">{problem}</p>}
    </>
  );
}

function Pairs<T extends NamedPair>({
  of,
  more,
  act,
}: {
  of: readonly T[];
  more?: (pair: T) => ComponentChildren;
  act?: (pair: T) => ComponentChildren;
}) {
  return (
    <ul class="handing-pairs">
      {of.map((pair) => (
        <li key={keyOf(pair)}>
          <span>
            <b>
              <bdi>{clip(pair.driveName, 80)}</bdi>
            </b>
            , <bdi>{clip(pair.vehicleName, 60)}</bdi>
            {more && (
              <>
                <br />
                {more(pair)}
              </>
            )}
          </span>
          {act?.(pair)}
        </li>
      ))}
    </ul>
  );
}

import { effect } from '@preact/signals';
import { given } from '../../geo/given.ts';
import type { Sample } from '../../main/contract/description.ts';
import { choosing, notice, tellAlso, work } from '../state/happening.ts';
import { openedDrive, openedMap } from '../state/opened.ts';
import { plan } from '../state/plan.ts';
import { workBegun } from './long-work.ts';
import { openWanted } from './open.ts';
import { OFFER_MAP } from './open-in.ts';
import { type Wanted, wantedSample } from './wanted.ts';

interface First {
  readonly wanted: Wanted;
  readonly sample: Sample;
  /** `workBegun` when the window began: what has been begun since, a person began */
  readonly begunBefore: number;
}

/**
 * Opens what the window begins with, the sample where that cannot be had. What a person chose meanwhile is never
 * overtaken: only where that ends with no drive open does what the window begins with follow, on the map they chose.
 * @returns whether a person has chosen something meanwhile
 */
export async function openFirst({ wanted, sample, begunBefore }: First): Promise<boolean> {
  let own = begunBefore;
  const isChosen = () => choosing.peek() > 0 || workBegun() !== own;
  const open = async (next: Wanted) => {
    const opening = openWanted(next);
    own = workBegun();
    await opening;
  };
  if (!isChosen()) await open(wanted);
  if (isChosen()) {
    while (isChosen()) {
      while (isBusy()) await workDone();
      if (openedDrive.peek() || plan.peek()) return true;
      const said = notice.peek();
      await open(onChosenMap(wanted));
      tellAlso(said);
    }
    return true;
  }
  if (!isBare(wanted) || wanted.drive?.source.kind === 'sample') return false;
  const why = notice.peek()?.say;
  await open(wantedSample(sample, sample.defaultDrive));
  if (isChosen()) return true;
  if (why !== undefined && !notice.peek())
    notice.value = { kind: 'error', say: `${why} The sample drive is shown instead.`, offers: [OFFER_MAP] };
  return false;
}

/** Whether nothing is shown of what was wanted. */
function isBare({ drive }: Wanted): boolean {
  return !plan.peek() && !openedDrive.peek() && (drive !== undefined || !openedMap.peek());
}

/** @param wanted what the window begins with; a map chosen meanwhile takes the place of its map */
function onChosenMap(wanted: Wanted): Wanted {
  const map = openedMap.peek();
  if (map === undefined) return wanted;
  return { map: { source: map.source, ...given({ about: map.about }) }, ...given({ drive: wanted.drive }) };
}

const isBusy = () => work.peek() !== undefined || choosing.peek() > 0;

/** Resolves when nothing is being opened, nor about to be. */
function workDone(): Promise<void> {
  return new Promise((resolve) => {
    const stop = effect(() => {
      if (work.value !== undefined || choosing.value > 0) return;
      queueMicrotask(() => stop());
      resolve();
    });
  });
}

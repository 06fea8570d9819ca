import { given } from '../../../../geo/given.ts';

/** How far an import has come. */
export interface ImportProgress {
  /** what is done now, in words */
  readonly what: string;
  /** 0…1, never falling */
  readonly share: number;
  /** of the source, as if it were read evenly */
  readonly bytes: number;
  readonly totalBytes: number;
  /** from the time taken so far; missing until that tells anything */
  readonly secondsLeft?: number;
}

const READING = 'Reading roads and places';
const LAYING = 'Laying out the map';

/** What the user is told of each step. */
const WORDS: Readonly<Record<StepName, string>> = {
  plan: 'Looking through the file',
  read: READING,
  relations: READING,
  ways: READING,
  nodes: READING,
  rebuild: LAYING,
  areas: LAYING,
  lines: LAYING,
  tiles: LAYING,
  names: 'Listing names',
};

/** Shares of the whole that each stage takes, as measured with country extracts. */
const WEIGHTS = {
  plan: 1,
  read: 30,
  relations: 3,
  ways: 30,
  nodes: 25,
  rebuild: 16,
  areas: 1,
  lines: 3,
  tiles: 22,
  names: 1,
} as const;
export type StepName = keyof typeof WEIGHTS;

const TELL_FROM = 0.03;

/** Tells how far an import has come, stage by stage. */
export class ProgressTeller {
  private readonly tell: ((progress: ImportProgress) => void) | undefined;
  private readonly totalBytes: number;
  private readonly started = performance.now();
  private readonly sum: number;
  private before = 0;
  private highest = 0;

  /** @param steps in their order */
  constructor(
    tell: ((progress: ImportProgress) => void) | undefined,
    totalBytes: number,
    steps: readonly StepName[],
  ) {
    this.tell = tell;
    this.totalBytes = totalBytes;
    this.sum = steps.reduce((sum, step) => sum + WEIGHTS[step], 0);
  }

  /** @param share of the step that is done, 0…1 */
  at(step: StepName, share: number): void {
    this.highest = Math.max(this.highest, (this.before + WEIGHTS[step] * share) / this.sum);
    this.say(step);
  }

  finish(step: StepName): void {
    this.before += WEIGHTS[step];
    this.highest = Math.max(this.highest, Math.min(1, this.before / this.sum));
    this.say(step);
  }

  private say(step: StepName): void {
    const share = this.highest;
    const seconds = (performance.now() - this.started) / 1000;
    this.tell?.({
      what: WORDS[step],
      share,
      bytes: Math.round(share * this.totalBytes),
      totalBytes: this.totalBytes,
      ...given({ secondsLeft: share < TELL_FROM ? undefined : (seconds * (1 - share)) / share }),
    });
  }
}

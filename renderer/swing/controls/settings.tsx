import type { LessonSettings } from '../../../geo/swing/lessons/scene.ts';
import { type Range, rangesOf, USES } from '../../../geo/swing/lessons/settings.ts';
import type { Settings } from '../../../main/contract/settings.ts';
import { clip } from '../../drive/words.ts';
import { vehicle, vehicles, settings as windowSettings } from '../../state/kept.ts';
import { besideId, chosen, lesson, rackOn, rackWanted, set, shown, TRY_OUT_RACK_M } from '../state.ts';
import { metresText, shortText } from '../words.ts';
import { OneOf } from './one-of.tsx';
import { Slider } from './slider.tsx';

/** What the trainer can set in this lesson; what means nothing in it is not there. */
export function LessonSettingsForm() {
  const scene = shown.value?.scene;
  if (!scene) return null;
  const uses = USES[lesson.value];
  const ranges = rangesOf(lesson.value, scene.vehicle);
  const { units } = windowSettings.value;
  return (
    <section class="swing-settings" aria-label="What to try">
      {uses.filter(isSlid).map((key) => (
        <Slide key={key} name={key} range={ranges[key]} units={units} />
      ))}
      <div class="swing-choices">
        {uses.filter(isChosen).map((key) => (
          <Choice key={key} name={key} />
        ))}
      </div>
      <RackChoice />
      <BesideChoice />
    </section>
  );
}

type Slid = 'gapM' | 'lockShare' | 'straightM' | 'laneM' | 'kerbRadiusM' | 'openingM';
type Chosen = Exclude<keyof LessonSettings, Slid>;

const LABEL: Readonly<Record<keyof LessonSettings, string>> = {
  gapM: 'Gap beside the vehicle',
  lockShare: 'Wheel turned',
  straightM: 'Straight first',
  laneM: 'Lane',
  kerbRadiusM: 'Radius of the kerb',
  openingM: 'Opening',
  driveSide: 'Driving on the',
  turnSide: 'Turning',
  beside: 'Beside it',
};

const AMONG = {
  driveSide: [
    ['left', 'left'],
    ['right', 'right'],
  ],
  turnSide: [
    ['left', 'left'],
    ['right', 'right'],
  ],
  beside: [
    ['kerb', 'kerb'],
    ['wall', 'wall'],
    ['parked car', 'parked car'],
  ],
} as const;

function isChosen(key: keyof LessonSettings): key is Chosen {
  return key in AMONG;
}

function isSlid(key: keyof LessonSettings): key is Slid {
  return !isChosen(key);
}

function Slide({ name, range, units }: { name: Slid; range: Range; units: Settings['units'] }) {
  const value = chosen.value[name];
  return (
    <Slider
      label={LABEL[name]}
      value={value}
      min={range.from}
      max={range.to}
      step={range.step}
      text={textOf(name, value, units)}
      onInput={(next) => set({ [name]: next })}
    />
  );
}

function textOf(name: Slid, value: number, units: Settings['units']): string {
  if (name === 'lockShare') return value >= 1 ? 'full lock' : `${Math.round(value * 100)} % of lock`;
  return name === 'gapM' ? shortText(value, 'nearest', units) : metresText(value, units);
}

function Choice({ name }: { name: Chosen }) {
  return (
    <OneOf<string>
      label={LABEL[name]}
      value={chosen.value[name]}
      among={AMONG[name]}
      onChoose={(value) => set({ [name]: value })}
    />
  );
}

function RackChoice() {
  const own = vehicle.value?.card.rack;
  return (
    <label class="swing-tick">
      <input
        type="checkbox"
        checked={rackOn.value}
        onChange={({ currentTarget }) => {
          rackWanted.value = currentTarget.checked;
        }}
      />
      {own
        ? ` with its rack, ${own.lengthM.toFixed(2)} m`
        : ` with a rack of ${TRY_OUT_RACK_M.toFixed(2)} m, to try out`}
    </label>
  );
}

function BesideChoice() {
  const others = vehicles.value.filter(({ id }) => id !== vehicle.value?.id);
  if (others.length === 0) return null;
  return (
    <div class="swing-compare">
      <label for="swing-beside">Compare with</label>
      <select
        id="swing-beside"
        value={others.some(({ id }) => id === besideId.value) ? besideId.value : ''}
        onChange={({ currentTarget }) => {
          besideId.value = currentTarget.value === '' ? undefined : currentTarget.value;
        }}
      >
        <option value="">no other</option>
        {others.map(({ id, card }) => (
          <option key={id} value={id}>
            {clip(card.name, 60)}
          </option>
        ))}
      </select>
    </div>
  );
}

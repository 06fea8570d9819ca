import {
  CHOICES,
  type ChosenSetting,
  isChosen,
  type LessonSettings,
  type Range,
  rangesOf,
  type SlidSetting,
  USES,
} from '../../../geo/swing/lessons/scene/settings.ts';
import { TRY_OUT_RACK_M } from '../../../geo/swing/swing-vehicle.ts';
import { shortIn, sizeIn, type Units, wayIn } from '../../../geo/units/in-units.ts';
import { clip } from '../../../geo/units/text.ts';
import { settings, vehicle, vehicles } from '../../state/kept.ts';
import { besideId, chosen, lesson, rackOn, set, tryRack } from '../state/lesson.ts';
import { shown } from '../state/shown.ts';
import { OneOf } from './one-of.tsx';
import { Slider } from './slider.tsx';

/** What the trainer can set in this lesson; what means nothing in it is not there. */
export function LessonSettingsForm() {
  const scene = shown.value?.scene;
  if (!scene) return null;
  const uses = USES[lesson.value];
  const ranges = rangesOf(lesson.value, scene.vehicle);
  const { units } = settings.value;
  return (
    <section class="swing-settings" aria-label="What to try">
      {uses.map((key) =>
        isChosen(key) ? null : <Slide key={key} name={key} range={ranges[key]} units={units} />,
      )}
      <div class="swing-choices">
        {uses.map((key) => (isChosen(key) ? <Choice key={key} name={key} /> : null))}
      </div>
      <RackChoice />
      <BesideChoice />
    </section>
  );
}

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

function Slide({ name, range, units }: { name: SlidSetting; range: Range; units: Units }) {
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

function textOf(name: SlidSetting, value: number, units: Units): string {
  if (name === 'lockShare') return value >= 1 ? 'full lock' : `${Math.round(value * 100)} % of lock`;
  return name === 'gapM' ? shortIn(units, value, 'down') : wayIn(units, value);
}

function Choice({ name }: { name: ChosenSetting }) {
  return (
    <OneOf
      label={LABEL[name]}
      value={chosen.value[name]}
      among={CHOICES[name]}
      onChoose={(value) => set({ [name]: value })}
    />
  );
}

function RackChoice() {
  const { units } = settings.value;
  const own = vehicle.value?.card.rack;
  return (
    <label class="swing-tick">
      <input
        type="checkbox"
        checked={rackOn.value}
        onChange={({ currentTarget }) => tryRack(currentTarget.checked)}
      />
      {own
        ? ` with its rack, ${sizeIn(units, own.lengthM, 'nearest')}`
        : ` with a rack of ${sizeIn(units, TRY_OUT_RACK_M, 'nearest')}, to try out`}
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

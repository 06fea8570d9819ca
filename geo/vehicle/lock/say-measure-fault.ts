import type { MeasureFault } from './measured-lock.ts';

/** What is wrong with a measurement of the yard, and what to do. */
export function sayMeasureFault({ field, kind }: MeasureFault): string {
  if (field === 'rearWheelCircleM')
    return kind === 'too tight'
      ? 'no vehicle of this wheelbase turns in so small a circle; give the whole way across, not half of it'
      : kind === 'too wide'
        ? 'wider than any road vehicle of this wheelbase needs; was the wheel hard over all the way round?'
        : 'the tape and chalk are too far off to tell the circle by; measure more closely';
  switch (kind) {
    case 'too tight':
      return 'farther than a tail of this length can swing; was it measured from the line of the side?';
    case 'too wide':
      return 'less than a tail of this length swings at full lock; was the wheel hard over before it rolled?';
    case 'tells nothing':
      return 'this tail is too short to tell the turning circle by; chalk the circle of the inner rear wheel instead';
  }
}

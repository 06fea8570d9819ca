import type { Tags } from './words.ts';

/** What field tracks are made of. */
export const TRACK_SURFACES: readonly Tags[] = [
  { surface: 'gravel', tracktype: 'grade2' },
  { surface: 'ground', tracktype: 'grade4' },
  { surface: 'compacted', tracktype: 'grade2' },
  { surface: 'grass', tracktype: 'grade5' },
  { surface: 'concrete', tracktype: 'grade1' },
];

/** Farms are called one of these and one of those. */
export const FARMS: readonly string[] = [
  'Hall',
  'Manor',
  'Low',
  'High',
  'Home',
  'Mill',
  'Moor',
  'Ings',
  'Carr',
  'Grange',
  'Bank',
  'Toft',
  'Field',
  'Wood',
  'Croft',
  'Holt',
];
export const FARM_KINDS: readonly string[] = ['Farm', 'Barn', 'Cottage'];
export const DRIVE_SURFACES: readonly string[] = ['asphalt', 'gravel', 'compacted'];

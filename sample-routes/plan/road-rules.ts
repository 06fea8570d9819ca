import type { AreaPlan, Tags } from './words.ts';

/** Whole roads that carry a rule, by key. */
export const RULES: Readonly<Record<string, Tags>> = {
  market: { 'motor_vehicle:conditional': 'no @ (Sa 07:00-17:00)' },
  churchgate: { maxwidth: '6\'6"' },
  'west-link': { 'maxweight:conditional': '3 @ (20:00-07:00)' },
  'north-u3': { 'motor_vehicle:conditional': 'destination @ (Mo-Fr 08:15-09:15,14:45-15:45)' },
  'north-v1': { oneway: 'yes' },
  'north-v3': { oneway: 'yes' },
  'north-u2': { oneway: 'yes' },
  'north-u4': { oneway: '-1' },
  'terrace-u1': { oneway: 'yes' },
  'south-v1': { oneway: 'yes' },
  'u-carr': { motor_vehicle: 'destination' },
  'u-link': { hgv: 'no', maxweight: '7.5' },
  'c-fold': { 'maxweight:hgv': '7.5' },
  'u-down': { maxwidth: '2.6' },
  'u-north': { 'hgv:conditional': 'no @ (weight>7.5)' },
};

/** Parts of roads: from and to as shares of the length. */
export const PARTS: readonly {
  readonly key: string;
  readonly from: number;
  readonly to: number;
  readonly tags: Tags;
}[] = [
  { key: 'c-head', from: 0, to: 0.12, tags: { incline: '12%', width: '5' } },
  { key: 'c-head', from: 0.12, to: 0.24, tags: { incline: '18%', width: '5', hazard: 'curves' } },
  { key: 'c-head', from: 0.24, to: 0.34, tags: { incline: '9%' } },
  {
    key: 'u-barrow',
    from: 0.25,
    to: 0.85,
    tags: { surface: 'gravel', smoothness: 'bad', maxspeed: '20 mph' },
  },
  { key: 'c-marsh', from: 0.25, to: 0.4, tags: { flood_prone: 'yes' } },
  { key: 'u-upper', from: 0.45, to: 0.8, tags: { surface: 'compacted' } },
  { key: 'u-quillet', from: 0.05, to: 0.2, tags: { incline: '-11%' } },
  { key: 'b-lark', from: 0.3, to: 0.45, tags: { incline: '7%' } },
];

/** Things standing on a road, by its key and share of the length. */
export const THINGS: readonly { readonly key: string; readonly at: number; readonly tags: Tags }[] = [
  { key: 'west-link', at: 0.2, tags: { traffic_calming: 'hump' } },
  { key: 'west-link', at: 0.4, tags: { traffic_calming: 'hump' } },
  { key: 'west-link', at: 0.6, tags: { traffic_calming: 'hump' } },
  { key: 'north-link', at: 0.3, tags: { traffic_calming: 'table' } },
  { key: 'north-link', at: 0.6, tags: { traffic_calming: 'chicane' } },
  { key: 'estate-west', at: 0.5, tags: { traffic_calming: 'cushion' } },
  { key: 'c-upper', at: 0.12, tags: { barrier: 'cattle_grid' } },
  { key: 'u-north', at: 0.5, tags: { barrier: 'cattle_grid' } },
  { key: 'u-upper', at: 0.62, tags: { barrier: 'gate' } },
  { key: 'u-barrow', at: 0.3, tags: { barrier: 'gate', access: 'yes' } },
  { key: 'high', at: 0.35, tags: { highway: 'crossing', crossing: 'traffic_signals' } },
  { key: 'high', at: 0.7, tags: { highway: 'crossing', crossing: 'uncontrolled' } },
  { key: 'b-south', at: 0.04, tags: { highway: 'crossing', crossing: 'zebra' } },
  { key: 'a-port', at: 0.5, tags: { highway: 'speed_camera' } },
];

/** Turns forbidden from one road into another where they meet. */
export const TURNS: readonly { readonly from: string; readonly to: string; readonly tags: Tags }[] = [
  { from: 'b-south', to: 'high', tags: { restriction: 'no_left_turn' } },
  { from: 'north-link', to: 'a-east', tags: { restriction: 'no_right_turn', except: 'bus' } },
  { from: 'c-fold', to: 'b-lark', tags: { 'restriction:hgv': 'no_left_turn' } },
];

/** Where two roads meet round a painted dot. */
export const MINI_ROUNDABOUTS: readonly { readonly one: string; readonly two: string }[] = [
  { one: 'north-link', two: 'b-north' },
];

export const ZONE: AreaPlan = {
  tags: { boundary: 'low_emission_zone', name: 'Northfield Clean Air Zone' },
  ring: '470 330, 1400 420, 1420 1000, 430 900',
};

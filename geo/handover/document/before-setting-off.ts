/** What is looked after before setting off; a firm may put its own list in this one's place. */
export const BEFORE_SETTING_OFF: readonly string[] = [
  'Gas shut off at the bottle',
  'Windows and roof lights shut, aerial down',
  'Step in, awning in, cable and hose stowed',
  'Waste water and cassette emptied',
  'Cupboards, fridge and drawers locked',
  'Rack within its limit, bicycles tied, lights to be seen',
  'Tyres, lights, mirrors set',
  'Everyone on board knows the height',
];

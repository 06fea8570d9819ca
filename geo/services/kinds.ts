/** What a motorhome needs on the way, and can have at a place: each by its own mapped key. */
export const SERVICE_KINDS = ['cassette', 'grey water', 'fresh water', 'LPG', 'AdBlue', 'fuel'] as const;
export type ServiceKind = (typeof SERVICE_KINDS)[number];

/** What is done there, as one says it to a driver. */
export const DO_SERVICE: Readonly<Record<ServiceKind, string>> = {
  cassette: 'Empty the cassette',
  'grey water': 'Empty the waste water',
  'fresh water': 'Fill the fresh water',
  LPG: 'Fill LPG',
  AdBlue: 'Fill AdBlue',
  fuel: 'Fuel',
};

/** What streets are named after. */
export const STEMS: readonly string[] =
  'Tanner, Cooper, Marl, Saddler, Teasel, Larkspur, Sorrel, Bramble, Fletcher, Weaver, Chandler, Thimble, Osier, Withy, Sedge, Heron, Dabchick, Curlew, Plover, Redshank, Tithe, Glebe, Maltings, Kiln, Lime, Foundry, Gasworks, Signal, Turntable, Goods Yard, Cattle Market, Butter, Wool, Corn, Barley, Rye, Oat, Orchard, Medlar, Quince, Damson, Pippin, Russet, Hawthorn, Spindle, Rowan, Alder, Aspen, Hornbeam, Field Maple, Primrose, Campion, Harebell, Yarrow, Tansy, Clover, Vetch, Foxglove, Bracken, Gorse, Lapwing, Wheatear, Siskin, Dunnock, Linnet, Wagtail, Dipper, Kestrel, Merlin, Pound, Pinfold, Sheepwash, Packhorse, Drover, Farrier, Wheelwright, Thatcher, Hurdle, Coppice, Ropewalk, Sailmaker, Net Loft, Capstan, Mizzen, Anchor, Beacon, Lantern, Tiller, Bowline, Herring, Cockle, Sandpiper, Turnstone, Thrift, Marram, Samphire, Glasswort, Weir, Sluice, Leat, Millrace, Fulling, Dyehouse, Bleach, Spinner, Shuttle, Bobbin'.split(
    ', ',
  );

/** What a street name ends in, by where the street lies. */
export const ENDS = {
  town: ['Street', 'Row', 'Road', 'Terrace'],
  estate: ['Close', 'Way', 'Drive', 'Gardens', 'Crescent', 'Rise'],
  village: ['Lane', 'Close', 'Garth', 'End', 'Hill'],
} as const;

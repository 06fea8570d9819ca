const YARD = `  lanegauge yard add DRIVE.gpx...               put drives into the library; several tracks are the days of a tour
  lanegauge yard list                           drives and vehicles, their ids, the sheets that are out, and what lies in the bin
  lanegauge yard remove ID | rename ID NAME | restore ID
  lanegauge yard choose ID VERSION              of what was changed on two computers at once
  lanegauge yard vehicle add CARD.json... | vehicle remove ID
  lanegauge yard grid [--vehicle CARD ...] [--csv]   every drive with every vehicle, checked on the maps of the shelf
  lanegauge yard recheck                        check again what is out of date, and tell what is otherwise
  lanegauge yard changes [--seen-by INITIALS] [--drive ID ...] [--vehicle-id ID ...]
                              what is otherwise than anybody has seen; with initials it has been seen, and is told no more
  lanegauge yard day ID [--leave 2027-06-12T09:30] [--home-by 2027-06-12T17:00] [--stop LAT,LON,MINUTES,NAME ...]
      [--remove-stop NUMBER|NAME ...] [--clear] [--vehicle-id ID]       the drive's stops and return hour; with a vehicle when to leave each stop at the latest
  lanegauge yard out                            sheets that are out, first those changed since, with what is new or worse
  lanegauge yard back NUMBER [--undo]           that sheet's vehicle is back today, and the sheet ended
  lanegauge yard sheet NUMBER --out FOLDER      a handing-over again, byte for byte as it was
  lanegauge yard note add --at LAT,LON --say TEXT [--height M] [--width M] [--mass KG] [--answers FINDING_ID]
      [--seen DATE] [--until DATE] [--by INITIALS]   what the firm measured and the map does not tell
      [--leave]               the firm has leave to drive there: settles the finding answered where that asks for leave
  lanegauge yard note list | note remove ID
  lanegauge yard note export FILE.geojson       all notes, for another firm
  lanegauge yard note import FILE.geojson       takes in another firm's notes; those known already stay as they are
  lanegauge yard note for-mappers FILE.csv [--map MAP ...]   figures that the map lacks or has otherwise, for whoever maps
  lanegauge yard place [FOLDER]                 where the library lies; with a folder, from now on there
      ID is an item's id, its name, or as much of the beginning of either as tells it from the others.
      [--yard FOLDER]         with each: a library elsewhere, such as on a shared disk
      [--json]                with each of them
`;

/** What each command takes, by its name. */
const COMMANDS: Readonly<Record<string, string>> = {
  check: `  lanegauge check --route DRIVE.gpx [--map MAP] [--map MAP2] --vehicle CARD
      without --map the maps on the shelf are used
      [--load LOAD.json]      what is on board: what exceeds a plate is held against the road too
      [--track NAME|NUMBER]   which track, where the file holds several
      [--leave 2027-06-12T09:30]   when the drive starts, local time
      [--country GB]          where the place cannot tell the country
      [--way-round]           ways past what is barred, each checked, with what they cost
      [--past FINDING_ID]     and past this finding, tight or unknown; may be repeated
      [--yard FOLDER]         the library whose local notes count; without it the one on this computer
      [--no-notes]            leave local notes out
      [--json]                print the report alone, as JSON
      [--out FOLDER]          also write report.json, report.txt, findings.geojson and drive.gpx there, and with --way-round
                              the drive by each way found, way-round-1.gpx and so on, and by those that pass all that can be
                              passed, ways-round-together.gpx; one that is still barred says so in its name
`,
  plan: `  lanegauge plan --at LAT,LON|NAME --at LAT,LON|NAME ... --vehicle CARD --gpx NEW.gpx [--map MAP]
      [--prefer quickest|widest] [--leave 2027-06-12T09:30] [--load LOAD.json] [--country GB] [--json]
      [--yard FOLDER] [--no-notes]
      lays out a drive for this vehicle from place to place, checked, and writes it as a dense track
`,
  'hand-over': `  lanegauge hand-over --route DRIVE.gpx --vehicle CARD --out FOLDER [--pdf]
      checks as above and writes what the driver takes along: sheet.html, phone.html, visor-card.html, drive.gpx with
      waypoints, findings.geojson, findings.csv, report.json, and day.ics with a leave time
      [--pdf]                 also sheet.pdf, printed by a Chromium, Chrome or Edge found on this computer
      [--drive ID --vehicle-id ID]   of the library, with the drive's kept leave time and day and what is aboard, in place of
                              the files; each may be given several times: then each drive with each vehicle, a folder each
      [--pair DRIVE=VEHICLE ...]     the same pair by pair, such as a week's; barred ones are listed before they are written
      [--firm TEXT] [--phone NUMBER]   your firm's heading and the telephone that drivers ring: kept, and on every sheet from now on
      It is kept in the library (--yard FOLDER: in that one) under the sheet's number.
`,
  load: `  lanegauge load --vehicle CARD --load LOAD.json
      [--json]                what each axle carries, against its plate
`,
  swing: `  lanegauge swing --vehicle CARD --path PATH.json --follow front|rear
      [--json]                tail swing, cut-in and swept width of the vehicle driven along a path, by one axle
`,
  shelf: `  lanegauge shelf import MAP... [--name NAME]   read maps once and keep them: each under its file's name, or all as one
  lanegauge shelf fetch --route DRIVE.gpx --by line|region [--from URL] [--yes]
      fetch the map of a drive: without --yes says what would be asked of whom, and asks nothing
  lanegauge shelf list
  lanegauge shelf verify [NAME] [--repair]      read all of it again; make damaged maps anew from their files
  lanegauge shelf remove NAME
      [--json]                with each of them
`,
  yard: YARD,
};

const WORDS = `  MAP is an OpenStreetMap extract: .osm.pbf, .osm, .osm.gz or Overpass JSON, told apart by content.
  CARD is the file of a vehicle card, or the name or id of a vehicle in the library.
  PATH holds { "segments": [{ "line": 30 }, { "arc": 8, "turnDeg": 90 }, { "line": 40 }] }: metres, degrees to the left.
  Exit code: 0 nothing barred or over, 1 something barred, over its plate, tighter than full lock, or no such drive,
  2 input could not be used, 130 stopped by Ctrl-C; of yard 0 done, whatever the pairs say;
  of shelf 0 done, 1 something on it is damaged.
`;

const HELP = `lanegauge: will this vehicle get along this drive?

${Object.values(COMMANDS).join('\n')}
  lanegauge --version

${WORDS}
Signs and the road decide. Map data is incomplete; this is an aid for planning, not a permit.
`;

/** Of one command alone; of all where there is none of that name. */
export function helpOf(name: string): string {
  if (name === 'yard') return YARD_HELP;
  const own = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  return own === undefined ? HELP : `${own}\n${WORDS}`;
}

/** What `npm start` takes. */
export const START_HELP = `npm start                        opens the window, or the same window in the browser where there is no display
npm start -- FILE                opens a drive (.gpx) or a map in it
npm start -- --once              prints the check of the sample drive, without a window
npm start -- --help              this

The commands of the terminal: npm run lanegauge -- --help
`;

/** The commands of the library alone. */
const YARD_HELP = `lanegauge yard: the drives, vehicles and notes of the firm, and which vehicle may take which drive.

${YARD}
  Exit code: 0 done, whatever the pairs say, 2 input could not be used, 130 stopped by Ctrl-C.
`;

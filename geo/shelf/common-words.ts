/**
 * Keys and values so frequent in OSM data that a number stands for each in a shelf's tag sets; the first 64 take one
 * byte. The list belongs to the format: a change is a new version of it (FORMAT_VERSION).
 */
const LIST = `
highway building yes name no surface service residential asphalt maxspeed oneway ref lanes landuse natural source
access bicycle foot track lit layer bridge tunnel unclassified tertiary secondary primary footway path barrier private
railway waterway sidewalk house forest wood water grass farmland meadow tracktype 2 30 50 1 driveway smoothness width
type multipolygon garage apartments leisure amenity parking 3 4 power detached addr:housenumber cycleway sign
motorway trunk motorway_link trunk_link primary_link secondary_link tertiary_link living_street pedestrian service_road
steps bridleway construction road busway crossing traffic_signals turning_circle turning_loop mini_roundabout stop
give_way bus_stop street_lamp motorway_junction destination designated permissive customers delivery permit agricultural
forestry discouraged motor_vehicle motorcar motorcycle motorhome vehicle hgv goods bus psv horse maxheight
maxheight:physical maxwidth maxwidth:physical maxlength maxweight maxweightrating maxaxleload maxspeed:forward
maxspeed:backward maxspeed:conditional maxweight:conditional access:conditional motor_vehicle:conditional
hgv:conditional oneway:conditional default below_default none unsigned signals est_width lanes:forward lanes:backward
turn:lanes turn:lanes:forward turn:lanes:backward left right both through left;through through;right junction roundabout
circular gate lift_gate swing_gate bollard block cattle_grid kerb fence wall hedge retaining_wall entrance toll_booth
height_restrictor cycle_barrier stile incline up down hazard ford embankment cutting covered man_made pier rail main
gauge usage electrified contact_line level_crossing tram light_rail narrow_gauge disused abandoned station platform
river stream ditch drain canal culvert riverbank farm farmyard industrial commercial retail orchard vineyard cemetery
allotments scrub heath grassland wetland sand beach coastline tree tree_row park garden pitch playground golf_course
nature_reserve fuel school hospital ferry_terminal sanitary_dump_station water_point drinking_water camp_site
caravan_site tourism place city town village hamlet suburb locality island boundary administrative
low_emission_zone admin_level route ferry duration restriction no_left_turn no_right_turn no_u_turn no_straight_on
only_straight_on only_left_turn only_right_turn no_entry no_exit except gravel paved unpaved ground dirt compacted
paving_stones concrete sett cobblestone fine_gravel mud excellent good intermediate bad very_bad horrible grade1 grade2
grade3 grade4 grade5 parking_aisle alley traffic_calming hump table bump cushion chicane choker island opening_hours
operator network official_name alt_name short_name wikidata wikipedia int_ref loc_name traffic_sign source:maxspeed
maxspeed:type zone:traffic zone:maxspeed postal_code start_date note direction forward backward level indoor area
building:levels building:part roof:shape height min_height ele population capacity fee toll seasonal winter_road
ice_road 5 6 7 8 10 20 40 60 70 80 90 100 110 120 130 0 -1 3.5 7.5 12 16 separate use_sidepath lane segregated
wheelchair motorroad designation public_footpath public_bridleway noexit crossing_ref zebra uncontrolled marked
unmarked viaduct aqueduct boardwalk passage building_passage bridge:name tunnel:name bridge_support noname proposed
planned conveying handrail mtb:scale sac_scale trail_visibility lcn rcn overtaking change:lanes destination:ref
destination:lanes placement operator:type access:lanes sport aeroway aerodrome runway taxiway apron aerialway chair_lift
cable_car
`;

/** By code. */
export const COMMON_WORDS: readonly string[] = [...new Set(LIST.split(/\s+/u).filter((word) => word !== ''))];

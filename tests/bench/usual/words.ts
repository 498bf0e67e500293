/** Lines for trials, in the three ways that words are set. Plain English words of six to eleven letters. */
export const LINES = {
  capitals: `HARVEST TYPECAST LAVATORY PAVEMENT FAULTLINE WAYFARER TOLERANT KEYSTONE VALUATION OUTWARD ADVOCATE
GRAVITY PLATFORM TAXATION YEARBOOK NOVELTY FACTORY WATERWAY AVIATOR CRAFTSMAN LANTERN MOUNTAIN ORATORY PARKWAY QUARTZ
RAILWAY SAVORY TREASURY UTOPIA VACANCY WORKSHOP YARDSTICK ZEALOUS BALLAST COTTAGE DYNASTY ESTUARY FORTRESS GALAXY
HALLWAY IVORY JAVELIN KARATE LIBERTY MATTOCK NAVIGATE OVATION POTTERY`.split(/\s+/),
  'Capital + small': `Tavern Volcano Wayside Yonder Typeface Parlour Lattice Avenue Fathom Keeper Orchard Quarry Thistle
Voyage Warbler Yearling Posture Framework Ladder Tolling Vessel Weather Yellow Pavilion Factory Kettle Bramble Cavern
Dovetail Everyday Gravel Harbour Island Juniper Lavender Mariner Northern Outpost Pewter Reliquary Saffron Tundra Umbrella
Verdant Woodland Yeoman Zephyr Archway`.split(/\s+/),
  small: `waverly kayak gravity rotary vowels pewter jovial cavalry knowing average twofold reward wavelet overly
raccoon tawny lowery brevity crowned develop eyebrow foxglove grovel havoc ivories kerbway lovely marvel network overview
pyramid quavers rivulet savoury twelve vivacity wavering yawning axletree boyhood corvette drywall eleventh favour gateway
hovercraft juryman keyword`.split(/\s+/),
} as const;

export type Cell = keyof typeof LINES;

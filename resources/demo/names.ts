/** The invented leagues of the demonstration, and their invented skaters: the name skated under and the number. */
export interface Named {
  readonly league: string;
  readonly name: string;
  /** 0 to 4 digits, a text; empty where somebody has none yet. */
  readonly number: string;
}

/** Names of many lengths and scripts, and numbers that come back in other leagues: as leagues' own lists are. */
const byLeague: Readonly<Record<string, readonly (readonly [name: string, number: string])[]>> = {
  "Lantern Bay": [
    ["Copper Wren", "07"],
    ["Ödla Snabb", "12"],
    ["Marrow, the Younger", "88"],
    ["Quiet Tuesday", "3"],
    ["Zoë Quickstep", "41"],
    ["Tin Whistle", "505"],
    ["Żółta Łódka", "19"],
    ["Bo", "1"],
    ["Harbour Fog", "64"],
    ["Peña Relámpago", "230"],
    ["Slate Roof Sonata", "9"],
    ["Ида Рябина", "77"],
    ["Moss Parcel", "212"],
    ["Half Past Thunder", "1030"],
    ["Næste Station", "33"],
    ["The Long Way Round the Harbour Wall", "5"],
    ["Vera Ropewalk", "14"],
    ["Salt Ledger", ""],
    ["Gió Biển", "26"],
    ["Pickle Barge", "99"],
    ["Second Kettle", "48"],
    ["Ember & Ash", ""],
  ],
  "Kiln Hollow": [
    ["Süße Lärche", "07"],
    ["Chimney Comet", "12"],
    ["Flèche d'Août", "8"],
    ["Rue Anvil", "101"],
    ["Μικρή Άγκυρα", "27"],
    ["Clay Pigeon Post", "404"],
    ["Nettle Soup", "16"],
    ["Gümüş İğde", "55"],
    ["Old Furnace Road", "2"],
    ["Plum Static", "71"],
    ["Cinder Waltz", "600"],
    ["Ash Tuesday", ""],
    ["하늘돌", "34"],
    ["Ox", "0"],
    ["Grit Almanac", "88"],
    ["Þoka Ský", "45"],
    ["Velvet Spanner", "11"],
    ["Ruddy Barrel", "63"],
    ["Kelp & Kindling", "29"],
    ["Tall Order", "180"],
  ],
  "Övre Kvarn": [
    ["Mjölnare Två", "07"],
    ["Wheelwright's Daughter", "21"],
    ["そらの石", "12"],
    ["Damson Jam", "3"],
    ["Łąka o Świcie", "90"],
    ["Flint & Feather", "6"],
    ["نسيم الميناء", "52"],
    ["Paper Lantern Parade", "808"],
    ["Granite Hush", "17"],
    ["Elmira Overshot", "39"],
    ["Čáp na Komíně", "44"],
    ["Barley Moon", "13"],
    ["Sluice", "700"],
    ["Rook & Ruin", "25"],
    ["Ninth Cog", "9"],
    ["Tõrvik", ""],
    ["Vesper Mill", "61"],
    ["Great Aunt Sundial", "1888"],
  ],
};

/** Everybody, league by league, in the order of the lists. */
export const everybody: readonly Named[] = Object.entries(byLeague).flatMap(([league, list]) =>
  list.map(([name, number]) => ({ league, name, number })),
);

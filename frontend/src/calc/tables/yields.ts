// Written by `python -m kitchenlog.calc.export_tables`; do not edit.

const TEXT_1 =
  "refuse % by weight of the item as bought; release of 2015, revised 2016";
const TEXT_2 =
  "edible raw portion (without: Pits)";
const TEXT_3 =
  "edible raw portion (without: Skin)";
const TEXT_4 =
  "edible raw portion (without: Pits and stems)";
const TEXT_5 =
  "edible raw portion (without: Stems)";
const TEXT_6 =
  "edible raw portion (without: Seeds and skin)";
const TEXT_7 =
  "edible raw portion (without: Peel and seeds)";
const TEXT_8 =
  "edible raw portion (without: Pit)";
const TEXT_9 =
  "edible raw portion (without: Ends)";
const TEXT_10 =
  "edible raw portion (without: Parings and trimmings)";
const TEXT_11 =
  "preparation yield used by USDA ERS";
const TEXT_12 =
  "USDA ERS Fruit and Vegetable Prices 2022";
const TEXT_13 =
  "Bakery and Business Math, ch. 25";

export interface YieldRow {
  readonly item: string;
  readonly state_in: string;
  readonly state_out: string;
  readonly yield_fraction: string;
  readonly loss_percent: string;
  readonly source: string;
  readonly source_year: string;
  readonly basis: string;
  readonly note: string;
}

export const YIELD_ROWS: readonly YieldRow[] = [
  {item: "Apples, raw, with skin", state_in: "as purchased, raw", state_out: "edible raw portion (without: Core and stem)", yield_fraction: "0.90", loss_percent: "10", source: "USDA SR28 FOOD_DES field Refuse, NDB 09003", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Apples, raw, without skin", state_in: "as purchased, raw", state_out: "edible raw portion (without: 10% core and stem, 13% skin)", yield_fraction: "0.77", loss_percent: "23", source: "USDA SR28 FOOD_DES field Refuse, NDB 09004", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Apricots, raw", state_in: "as purchased, raw", state_out: TEXT_2, yield_fraction: "0.93", loss_percent: "7", source: "USDA SR28 FOOD_DES field Refuse, NDB 09021", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Avocados, raw, all commercial varieties", state_in: "as purchased, raw", state_out: "edible raw portion (without: Seed and skin)", yield_fraction: "0.74", loss_percent: "26", source: "USDA SR28 FOOD_DES field Refuse, NDB 09037", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Bananas, raw", state_in: "as purchased, raw", state_out: TEXT_3, yield_fraction: "0.64", loss_percent: "36", source: "USDA SR28 FOOD_DES field Refuse, NDB 09040", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Blackberries, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Caps and spoiled berries)", yield_fraction: "0.96", loss_percent: "4", source: "USDA SR28 FOOD_DES field Refuse, NDB 09042", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Blueberries, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Stems and green or spoiled berries)", yield_fraction: "0.95", loss_percent: "5", source: "USDA SR28 FOOD_DES field Refuse, NDB 09050", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Breadfruit, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: 9% core, 13% skin)", yield_fraction: "0.78", loss_percent: "22", source: "USDA SR28 FOOD_DES field Refuse, NDB 09059", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Carambola, (starfruit), raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Seeds and stem end)", yield_fraction: "0.97", loss_percent: "3", source: "USDA SR28 FOOD_DES field Refuse, NDB 09060", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Cherries, sour, red, raw", state_in: "as purchased, raw", state_out: TEXT_4, yield_fraction: "0.90", loss_percent: "10", source: "USDA SR28 FOOD_DES field Refuse, NDB 09063", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Cherries, sweet, raw", state_in: "as purchased, raw", state_out: TEXT_4, yield_fraction: "0.92", loss_percent: "8", source: "USDA SR28 FOOD_DES field Refuse, NDB 09070", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Currants, european black, raw", state_in: "as purchased, raw", state_out: TEXT_5, yield_fraction: "0.98", loss_percent: "2", source: "USDA SR28 FOOD_DES field Refuse, NDB 09083", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Grapes, red or green (European type, such as Thompson seedless), raw", state_in: "as purchased, raw", state_out: TEXT_5, yield_fraction: "0.96", loss_percent: "4", source: "USDA SR28 FOOD_DES field Refuse, NDB 09132", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Guavas, common, raw", state_in: "as purchased, raw", state_out: TEXT_3, yield_fraction: "0.78", loss_percent: "22", source: "USDA SR28 FOOD_DES field Refuse, NDB 09139", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Jackfruit, raw", state_in: "as purchased, raw", state_out: TEXT_6, yield_fraction: "0.28", loss_percent: "72", source: "USDA SR28 FOOD_DES field Refuse, NDB 09144", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Lemons, raw, without peel", state_in: "as purchased, raw", state_out: "edible raw portion (without: 45% peel, 2% seeds)", yield_fraction: "0.53", loss_percent: "47", source: "USDA SR28 FOOD_DES field Refuse, NDB 09150", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Limes, raw", state_in: "as purchased, raw", state_out: TEXT_7, yield_fraction: "0.84", loss_percent: "16", source: "USDA SR28 FOOD_DES field Refuse, NDB 09159", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Mangos, raw", state_in: "as purchased, raw", state_out: TEXT_6, yield_fraction: "0.71", loss_percent: "29", source: "USDA SR28 FOOD_DES field Refuse, NDB 09176", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Melons, cantaloupe, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: 9% cavity contents, 1% cutting loss, 39% rind)", yield_fraction: "0.51", loss_percent: "49", source: "USDA SR28 FOOD_DES field Refuse, NDB 09181", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Nectarines, raw", state_in: "as purchased, raw", state_out: TEXT_8, yield_fraction: "0.91", loss_percent: "9", source: "USDA SR28 FOOD_DES field Refuse, NDB 09191", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Oranges, raw, all commercial varieties", state_in: "as purchased, raw", state_out: TEXT_7, yield_fraction: "0.73", loss_percent: "27", source: "USDA SR28 FOOD_DES field Refuse, NDB 09200", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Tangerines, (mandarin oranges), raw", state_in: "as purchased, raw", state_out: TEXT_7, yield_fraction: "0.74", loss_percent: "26", source: "USDA SR28 FOOD_DES field Refuse, NDB 09218", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Papayas, raw", state_in: "as purchased, raw", state_out: TEXT_6, yield_fraction: "0.62", loss_percent: "38", source: "USDA SR28 FOOD_DES field Refuse, NDB 09226", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Passion-fruit, (granadilla), purple, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Shell)", yield_fraction: "0.52", loss_percent: "48", source: "USDA SR28 FOOD_DES field Refuse, NDB 09231", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Peaches, yellow, raw", state_in: "as purchased, raw", state_out: TEXT_8, yield_fraction: "0.96", loss_percent: "4", source: "USDA SR28 FOOD_DES field Refuse, NDB 09236", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Pears, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Stem, core and seeds)", yield_fraction: "0.90", loss_percent: "10", source: "USDA SR28 FOOD_DES field Refuse, NDB 09252", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Pineapple, raw, all varieties", state_in: "as purchased, raw", state_out: "edible raw portion (without: 8% core, 16% crown, 26% parings)", yield_fraction: "0.51", loss_percent: "49", source: "USDA SR28 FOOD_DES field Refuse, NDB 09266", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Plantains, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Skin and stems)", yield_fraction: "0.65", loss_percent: "35", source: "USDA SR28 FOOD_DES field Refuse, NDB 09277", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Plums, raw", state_in: "as purchased, raw", state_out: TEXT_2, yield_fraction: "0.94", loss_percent: "6", source: "USDA SR28 FOOD_DES field Refuse, NDB 09279", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Pomegranates, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Skin and membrane)", yield_fraction: "0.56", loss_percent: "44", source: "USDA SR28 FOOD_DES field Refuse, NDB 09286", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Quinces, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Core, seeds, and parings)", yield_fraction: "0.61", loss_percent: "39", source: "USDA SR28 FOOD_DES field Refuse, NDB 09296", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Raspberries, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Caps, stems, and spoiled berries)", yield_fraction: "0.96", loss_percent: "4", source: "USDA SR28 FOOD_DES field Refuse, NDB 09302", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Rhubarb, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: 19% ends, 6% leaves)", yield_fraction: "0.75", loss_percent: "25", source: "USDA SR28 FOOD_DES field Refuse, NDB 09307", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Soursop, raw", state_in: "as purchased, raw", state_out: TEXT_6, yield_fraction: "0.67", loss_percent: "33", source: "USDA SR28 FOOD_DES field Refuse, NDB 09315", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Strawberries, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Caps and stems)", yield_fraction: "0.94", loss_percent: "6", source: "USDA SR28 FOOD_DES field Refuse, NDB 09316", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Tamarinds, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Pods and seeds)", yield_fraction: "0.34", loss_percent: "66", source: "USDA SR28 FOOD_DES field Refuse, NDB 09322", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Watermelon, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Rind, seeds, and cutting loss)", yield_fraction: "0.52", loss_percent: "48", source: "USDA SR28 FOOD_DES field Refuse, NDB 09326", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Asparagus, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Butt ends)", yield_fraction: "0.53", loss_percent: "47", source: "USDA SR28 FOOD_DES field Refuse, NDB 11011", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Beans, snap, green, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Ends, strings, trimmings)", yield_fraction: "0.88", loss_percent: "12", source: "USDA SR28 FOOD_DES field Refuse, NDB 11052", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Beets, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Parings and part tops)", yield_fraction: "0.67", loss_percent: "33", source: "USDA SR28 FOOD_DES field Refuse, NDB 11080", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Broccoli, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Leaves and tough stalks with trimmings)", yield_fraction: "0.61", loss_percent: "39", source: "USDA SR28 FOOD_DES field Refuse, NDB 11090", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Brussels sprouts, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Outer leaves)", yield_fraction: "0.90", loss_percent: "10", source: "USDA SR28 FOOD_DES field Refuse, NDB 11098", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Cabbage, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Outer leaves and core)", yield_fraction: "0.80", loss_percent: "20", source: "USDA SR28 FOOD_DES field Refuse, NDB 11109", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Carrots, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Crown, tops and scrapings)", yield_fraction: "0.89", loss_percent: "11", source: "USDA SR28 FOOD_DES field Refuse, NDB 11124", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Cassava, raw", state_in: "as purchased, raw", state_out: TEXT_3, yield_fraction: "0.84", loss_percent: "16", source: "USDA SR28 FOOD_DES field Refuse, NDB 11134", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Cauliflower, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Leaf stalks, cores and trimmings)", yield_fraction: "0.39", loss_percent: "61", source: "USDA SR28 FOOD_DES field Refuse, NDB 11135", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Celery, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Roots and trimmings)", yield_fraction: "0.89", loss_percent: "11", source: "USDA SR28 FOOD_DES field Refuse, NDB 11143", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Corn, sweet, yellow, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: 35% husk, silk, trimmings; 29% cob)", yield_fraction: "0.36", loss_percent: "64", source: "USDA SR28 FOOD_DES field Refuse, NDB 11167", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Cucumber, with peel, raw", state_in: "as purchased, raw", state_out: TEXT_9, yield_fraction: "0.97", loss_percent: "3", source: "USDA SR28 FOOD_DES field Refuse, NDB 11205", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Eggplant, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Ends, parings and trimmings)", yield_fraction: "0.81", loss_percent: "19", source: "USDA SR28 FOOD_DES field Refuse, NDB 11209", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Garlic, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Knob and skin)", yield_fraction: "0.87", loss_percent: "13", source: "USDA SR28 FOOD_DES field Refuse, NDB 11215", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Ginger root, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Scrapings)", yield_fraction: "0.93", loss_percent: "7", source: "USDA SR28 FOOD_DES field Refuse, NDB 11216", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Kale, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Stem ends, tough stems and tough midrib parts)", yield_fraction: "0.72", loss_percent: "28", source: "USDA SR28 FOOD_DES field Refuse, NDB 11233", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Leeks, (bulb and lower leaf-portion), raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Tops, root end and skin)", yield_fraction: "0.44", loss_percent: "56", source: "USDA SR28 FOOD_DES field Refuse, NDB 11246", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Mushrooms, white, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Trimmings)", yield_fraction: "0.97", loss_percent: "3", source: "USDA SR28 FOOD_DES field Refuse, NDB 11260", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Okra, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Crown and tips)", yield_fraction: "0.86", loss_percent: "14", source: "USDA SR28 FOOD_DES field Refuse, NDB 11278", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Onions, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Stem ends, sprouts and defects)", yield_fraction: "0.90", loss_percent: "10", source: "USDA SR28 FOOD_DES field Refuse, NDB 11282", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Peas, green, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Pods and inedible peas)", yield_fraction: "0.38", loss_percent: "62", source: "USDA SR28 FOOD_DES field Refuse, NDB 11304", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Peppers, sweet, green, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Stem ends, seeds and core)", yield_fraction: "0.82", loss_percent: "18", source: "USDA SR28 FOOD_DES field Refuse, NDB 11333", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Potatoes, flesh and skin, raw", state_in: "as purchased, raw", state_out: TEXT_10, yield_fraction: "0.75", loss_percent: "25", source: "USDA SR28 FOOD_DES field Refuse, NDB 11352", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Pumpkin, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Seeds, rind and stem)", yield_fraction: "0.70", loss_percent: "30", source: "USDA SR28 FOOD_DES field Refuse, NDB 11422", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Radishes, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Stem ends, rootlets and trimmings)", yield_fraction: "0.90", loss_percent: "10", source: "USDA SR28 FOOD_DES field Refuse, NDB 11429", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Spinach, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Large stems and roots)", yield_fraction: "0.72", loss_percent: "28", source: "USDA SR28 FOOD_DES field Refuse, NDB 11457", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Squash, summer, zucchini, includes skin, raw", state_in: "as purchased, raw", state_out: TEXT_9, yield_fraction: "0.95", loss_percent: "5", source: "USDA SR28 FOOD_DES field Refuse, NDB 11477", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Squash, winter, acorn, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Rind)", yield_fraction: "0.76", loss_percent: "24", source: "USDA SR28 FOOD_DES field Refuse, NDB 11482", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Squash, winter, butternut, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Seeds, rind and trimmings)", yield_fraction: "0.84", loss_percent: "16", source: "USDA SR28 FOOD_DES field Refuse, NDB 11485", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Sweet potato, raw, unprepared", state_in: "as purchased, raw", state_out: TEXT_10, yield_fraction: "0.72", loss_percent: "28", source: "USDA SR28 FOOD_DES field Refuse, NDB 11507", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Taro, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Ends and skin)", yield_fraction: "0.86", loss_percent: "14", source: "USDA SR28 FOOD_DES field Refuse, NDB 11518", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Tomatoes, red, ripe, raw, year round average", state_in: "as purchased, raw", state_out: "edible raw portion (without: Core and stem ends)", yield_fraction: "0.91", loss_percent: "9", source: "USDA SR28 FOOD_DES field Refuse, NDB 11529", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Turnips, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Parings)", yield_fraction: "0.81", loss_percent: "19", source: "USDA SR28 FOOD_DES field Refuse, NDB 11564", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Peppers, sweet, red, raw", state_in: "as purchased, raw", state_out: "edible raw portion (without: Stem ends, seed and core)", yield_fraction: "0.82", loss_percent: "18", source: "USDA SR28 FOOD_DES field Refuse, NDB 11821", source_year: "2015", basis: "read", note: TEXT_1},
  {item: "Apples, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.9", loss_percent: "10", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.4996 vs 0.4996)"},
  {item: "Bananas, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.64", loss_percent: "36", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.3085 vs 0.3085)"},
  {item: "Cantaloupe, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.51", loss_percent: "49", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.5529 vs 0.5528)"},
  {item: "Grapefruit, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.49", loss_percent: "51", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (1.3648 vs 1.3647)"},
  {item: "Kiwi, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.76", loss_percent: "24", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (1.3231 vs 1.3231)"},
  {item: "Mangoes, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.71", loss_percent: "29", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.7531 vs 0.7531)"},
  {item: "Oranges, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.68", loss_percent: "32", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.8772 vs 0.8771)"},
  {item: "Papaya, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.62", loss_percent: "38", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.6657 vs 0.6658)"},
  {item: "Peaches, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.96", loss_percent: "4", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.7754 vs 0.7755)"},
  {item: "Pears, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.9", loss_percent: "10", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.7467 vs 0.7466)"},
  {item: "Pineapple, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.51", loss_percent: "49", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.4401 vs 0.4401)"},
  {item: "Strawberries, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.94", loss_percent: "6", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (1.0095 vs 1.0094)"},
  {item: "Watermelon, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.52", loss_percent: "48", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.2429 vs 0.2429)"},
  {item: "Butternut squash, fresh (cooked)", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.714", loss_percent: "28.6", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.8032 vs 0.8033)"},
  {item: "Cabbage green, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.7788", loss_percent: "22.12", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.3384 vs 0.3384)"},
  {item: "Carrots, fresh, eaten raw", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.89", loss_percent: "11", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.3023 vs 0.3022)"},
  {item: "Carrots, fresh, cooked whole", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.8158", loss_percent: "18.42", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.3825 vs 0.3825)"},
  {item: "Cauliflower heads, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.8926", loss_percent: "10.74", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.6744 vs 0.6743)"},
  {item: "Celery, trimmed bunches", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.73", loss_percent: "27", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.4218 vs 0.4217)"},
  {item: "Cucumbers with peel", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.97", loss_percent: "3", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.3402 vs 0.3402)"},
  {item: "Cucumbers without peel", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.73", loss_percent: "27", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.4521 vs 0.4520)"},
  {item: "Green beans, fresh (cooked)", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.8466", loss_percent: "15.34", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.8529 vs 0.8528)"},
  {item: "Onions, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.9", loss_percent: "10", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.4335 vs 0.4335)"},
  {item: "Green peppers, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.82", loss_percent: "18", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.4772 vs 0.4771)"},
  {item: "Potatoes, fresh (cooked)", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.8113", loss_percent: "18.87", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.2663 vs 0.2663)"},
  {item: "Spinach, fresh, boiled", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.77", loss_percent: "23", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (1.7701 vs 1.7700)"},
  {item: "Spinach, fresh, eaten raw", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "1", loss_percent: "0", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.6359 vs 0.6360)"},
  {item: "Tomatoes, large round, fresh", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.91", loss_percent: "9", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.9007 vs 0.9006)"},
  {item: "Zucchini, fresh (cooked)", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "0.7695", loss_percent: "23.05", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.8436 vs 0.8437)"},
  {item: "Pinto beans, dried (cooked)", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "2.4692", loss_percent: "", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.2214 vs 0.2215)"},
  {item: "Kidney beans, dried (cooked)", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "2.4692", loss_percent: "", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.2996 vs 0.2996)"},
  {item: "Black-eyed peas, dried (cooked)", state_in: "as purchased", state_out: TEXT_11, yield_fraction: "2.5397", loss_percent: "", source: TEXT_12, source_year: "2022", basis: "read", note: "price/yield x cup size reproduces the published cup price (0.2927 vs 0.2926)"},
  {item: "Watermelon, fresh, whole", state_in: "as purchased", state_out: "diced, without rind", yield_fraction: "0.61", loss_percent: "39", source: "USDA Food Buying Guide for Child Nutrition Programs, Appendix B example, watermelon", source_year: "", basis: "read", note: ""},
  {item: "Apples, fresh, 125-138 count", state_in: "as purchased", state_out: "cored, unpeeled", yield_fraction: "0.91", loss_percent: "9", source: "USDA Food Buying Guide figure quoted in a state child-nutrition handout ('Is an apple always an apple?')", source_year: "", basis: "read-secondary", note: ""},
  {item: "Beans, green/wax", state_in: "as purchased", state_out: "trimmed", yield_fraction: "0.88", loss_percent: "12", source: "Bakery and Business Math (open textbook), ch. 25 Yield Percents table", source_year: "", basis: "read", note: ""},
  {item: "Apples", state_in: "as purchased", state_out: "trimmed", yield_fraction: "0.76", loss_percent: "24", source: TEXT_13, source_year: "", basis: "read", note: ""},
  {item: "Bananas", state_in: "as purchased", state_out: "peeled", yield_fraction: "0.68", loss_percent: "32", source: TEXT_13, source_year: "", basis: "read", note: ""},
  {item: "Beets, no tops", state_in: "as purchased", state_out: "trimmed", yield_fraction: "0.76", loss_percent: "24", source: TEXT_13, source_year: "", basis: "read", note: ""},
  {item: "Beets, with tops", state_in: "as purchased", state_out: "trimmed", yield_fraction: "0.49", loss_percent: "51", source: TEXT_13, source_year: "", basis: "read", note: ""},
  {item: "Broccoli", state_in: "as purchased", state_out: "trimmed", yield_fraction: "0.61", loss_percent: "39", source: TEXT_13, source_year: "", basis: "read", note: ""},
  {item: "Cabbage, green", state_in: "as purchased", state_out: "trimmed", yield_fraction: "0.79", loss_percent: "21", source: TEXT_13, source_year: "", basis: "read", note: ""},
  {item: "Carrots, no tops", state_in: "as purchased", state_out: "trimmed", yield_fraction: "0.82", loss_percent: "18", source: TEXT_13, source_year: "", basis: "read", note: ""},
  {item: "Carrots, with tops", state_in: "as purchased", state_out: "trimmed", yield_fraction: "0.6", loss_percent: "40", source: TEXT_13, source_year: "", basis: "read", note: ""},
  {item: "Cauliflower", state_in: "as purchased", state_out: "trimmed", yield_fraction: "0.45", loss_percent: "55", source: TEXT_13, source_year: "", basis: "read", note: ""},
  {item: "Pears", state_in: "as purchased", state_out: "sliced", yield_fraction: "0.78", loss_percent: "22", source: TEXT_13, source_year: "", basis: "read", note: ""},
  {item: "Strawberries", state_in: "as purchased", state_out: "hulled", yield_fraction: "0.87", loss_percent: "13", source: TEXT_13, source_year: "", basis: "read", note: ""},
  {item: "Zucchini", state_in: "as purchased", state_out: "trimmed", yield_fraction: "0.95", loss_percent: "5", source: TEXT_13, source_year: "", basis: "read", note: ""},
  {item: "Brussels sprouts", state_in: "as purchased", state_out: "trimmed", yield_fraction: "0.8", loss_percent: "20", source: "professional cooking textbook, trimming-loss section (2014)", source_year: "2014", basis: "read", note: ""},
  {item: "Asparagus", state_in: "as purchased", state_out: "trimmed", yield_fraction: "0.56", loss_percent: "44", source: "culinary-mathematics lecture notes, ch. 8", source_year: "", basis: "read", note: ""},
  {item: "Watermelon for jam", state_in: "whole fruit", state_out: "usable flesh", yield_fraction: "0.43", loss_percent: "57", source: "Practical Action technical brief, Jam, jellies and marmalade, watermelon jam", source_year: "", basis: "read", note: ""},
];

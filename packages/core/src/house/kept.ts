// What is taken for something that is kept cold or hot where a house file leaves it out.

/**
 * What is kept cold, where it starts and where it is lost. [°C]
 *
 * 8 °C: the most for chilled food in Great Britain (from memory) and for medicines and vaccines
 * (WHO, +2 to +8 °C); 0 °C: frozen food begins to thaw. A fridge is taken to run at 5 °C, a freezer
 * at -18 °C; common practice, no source.
 */
export const COLD = {
  food: { fromC: 5, limitC: 8 },
  medicine: { fromC: 5, limitC: 8 },
  frozen: { fromC: -18, limitC: 0 },
} as const

/** Room in which a hold-over is stated; common practice, no source. [°C] */
export const ROOM_C = 20

/** Lowest temperature of medicines and vaccines: WHO, store at +2 to +8 °C. [°C] */
export const MEDICINE_LEAST_C = 2

/**
 * Flow temperature of a boiler (common practice, no source), and where it is lost: thermal
 * discharge valves open at about 95 °C (trade glossaries); EN 303-5 allows 110 °C at most. [°C]
 */
export const BOILER = { fromC: 70, limitC: 95 } as const

/** Highest water temperature that EN 303-5 lets a solid-fuel boiler have. [°C] */
export const BOILER_MOST_C = 110

/** A cylinder of hot water; common practice, no source. [°C], [kWh a day] */
export const HOT_WATER = { fromC: 60, useC: 40, coldC: 10, lossKwhADay: 1.5 } as const

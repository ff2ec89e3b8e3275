// Files in and out: house files, meter and weather records, comma-separated text.

export { type Cell, type CellColumn, csvChunks, csvText, numberText, rowsOf } from './csv/write.js'
export { type LoadedHouse, loadHouse } from './house/load-house.js'
export { type HouseFile, houseFromText, readHouseFile } from './house/read-house-file.js'
export { type MeterOptions, meterFromText, readMeter } from './meter/read-meter.js'
export { decodeText } from './text/decode.js'
export { readText } from './text/read-text.js'
export { readWeather, weatherFromText } from './weather/read-weather.js'

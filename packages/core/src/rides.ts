// What a thread needs that only rides: the work behind a ride, without the rules of a house file,
// which take their time and room to load.

export * from './answers/ride-jobs.js'

// Refraction taken off again, so that columns can be compared with geometric altitudes.
//
// J. Meeus, Astronomical Algorithms, 2nd ed., eq. 16.4 in its printed digits (1.02', 10.3, 5.11);
// suncalc has 10.26 and 5.10 of the equation before, which moves the horizon by 0.0014°.

function refractionDeg(trueDeg: number): number {
  const h = Math.max(0, trueDeg)
  return 1.02 / 60 / Math.tan(((h + 10.3 / (h + 5.11)) * Math.PI) / 180)
}

/** True altitude that is seen at an apparent one. [°] */
export function trueAltitudeDeg(apparentDeg: number): number {
  let h = apparentDeg
  for (let i = 0; i < 30; i++) h = apparentDeg - refractionDeg(h)
  return h
}

// The clear sky of Bird & Hulstrom, a cross-check beside the product's own.
//
// R. E. Bird and R. L. Hulstrom, "A simplified clear sky model for direct and diffuse insolation on
// horizontal surfaces," SERI/TR-642-761, 1981, in the symbols of the report. Air mass by Kasten 1966,
// irradiance above the air given by the caller, refraction that of the given zenith angle.

const RAD = Math.PI / 180

export interface BirdAir {
  /** [mbar] */
  readonly pressureMbar: number
  /** Ozone and water vapour of a vertical column. [cm] */
  readonly ozoneCm: number
  readonly waterCm: number
  /** Broadband aerosol depth: 0.2758 · AOD at 380 nm + 0.35 · AOD at 500 nm */
  readonly aerosol: number
  /** Share of scattered light that goes forward. */
  readonly forward: number
  readonly albedo: number
}

export interface BirdSky {
  readonly airMass: number
  /** Transmittances of molecules, ozone, mixed gases, water and aerosol. */
  readonly rayleigh: number
  readonly ozone: number
  readonly gases: number
  readonly water: number
  readonly dust: number
  /** Beam towards the sun, beam on level ground, global and diffuse. [W/m²] */
  readonly beam: number
  readonly level: number
  readonly global: number
  readonly diffuse: number
}

/** F. Kasten, "A new table and approximation formula for the relative optical air mass," 1966, in
 * the digits of the report. */
export function kasten1966(zenithDeg: number): number {
  return 1 / (Math.cos(zenithDeg * RAD) + 0.15 * (93.885 - zenithDeg) ** -1.25)
}

/** Clear sky at a zenith angle under an irradiance above the air. [°], [W/m²] */
export function birdSky(zenithDeg: number, extra: number, air: BirdAir): BirdSky {
  const cosine = Math.cos(zenithDeg * RAD)
  const m = kasten1966(zenithDeg)
  const pressed = (m * air.pressureMbar) / 1013
  const xo = air.ozoneCm * m
  const xw = air.waterCm * m
  const ta = air.aerosol
  const rayleigh = Math.exp(-0.0903 * pressed ** 0.84 * (1 + pressed - pressed ** 1.01))
  const ozone =
    1 -
    0.1611 * xo * (1 + 139.48 * xo) ** -0.3035 -
    (0.002715 * xo) / (1 + 0.044 * xo + 0.0003 * xo ** 2)
  const gases = Math.exp(-0.0127 * pressed ** 0.26)
  const water = 1 - (2.4959 * xw) / ((1 + 79.034 * xw) ** 0.6828 + 6.385 * xw)
  const dust = Math.exp(-(ta ** 0.873) * (1 + ta - ta ** 0.7088) * m ** 0.9108)
  const absorbed = 1 - 0.1 * (1 - m + m ** 1.06) * (1 - dust)
  const mirror = 0.0685 + (1 - air.forward) * (1 - dust / absorbed)
  const beam = 0.9662 * extra * dust * water * gases * ozone * rayleigh
  const level = beam * cosine
  const scattered =
    ((extra * cosine * 0.79 * ozone * water * gases * absorbed) / (1 - m + m ** 1.02)) *
    (0.5 * (1 - rayleigh) + air.forward * (1 - dust / absorbed))
  const global = (level + scattered) / (1 - air.albedo * mirror)
  return {
    airMass: m,
    rayleigh,
    ozone,
    gases,
    water,
    dust,
    beam,
    level,
    global,
    diffuse: global - level,
  }
}

/**
 * Linke turbidity of an air, from the depth of its aerosol and its water.
 *
 *     TL = (9.4 + 0.9 m) · (dry + wet + aerosol)
 *     dry = -0.101 + 0.235 m^-0.16   wet = 0.112 m^-0.55 w^0.34
 *
 * F. Kasten, "The Linke turbidity factor based on improved values of the integral Rayleigh optical
 * thickness," Solar Energy 56, 239-244 (1996); P. Ineichen, Solar Energy 82, 1095-1097 (2008).
 */
export function kastenTurbidity(airMass: number, waterCm: number, aerosol: number): number {
  const dry = -0.101 + 0.235 * airMass ** -0.16
  const wet = 0.112 * airMass ** -0.55 * waterCm ** 0.34
  return (9.4 + 0.9 * airMass) * (dry + wet + aerosol)
}

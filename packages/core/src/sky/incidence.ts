// The angle at which the beam meets a plane, and what the glass throws back.

const RAD = Math.PI / 180

/** Usual loss coefficient of flat glass. Dimensionless */
export const GLASS_B0 = 0.05

/**
 * Cosine of the angle between the sun and the normal of a plane; negative from behind.
 *
 *     cos θ = sin h cos β + cos h sin β cos(γs - γ)
 *
 * @param altitudeDeg      Altitude of the sun. [°]
 * @param azimuthDeg       Azimuth of the sun, clockwise from north. [°]
 * @param tiltDeg          Tilt β of the plane from horizontal. [°]
 * @param planeAzimuthDeg  Where the plane faces, clockwise from north. [°]
 *
 * Source: J. A. Duffie and W. A. Beckman, "Solar Engineering of Thermal Processes," ch. 1.
 */
export function cosIncidence(
  altitudeDeg: number,
  azimuthDeg: number,
  tiltDeg: number,
  planeAzimuthDeg: number,
): number {
  const level = Math.sin(altitudeDeg * RAD) * Math.cos(tiltDeg * RAD)
  const tilted = Math.cos(altitudeDeg * RAD) * Math.sin(tiltDeg * RAD)
  return level + tilted * Math.cos((azimuthDeg - planeAzimuthDeg) * RAD)
}

/**
 * Share of the beam that passes the glass, relative to a beam that meets it squarely.
 *
 *     K = 1 - b0 · (1/cos θ - 1), not below 0
 *
 * @param cosine  cos θ; 0 is returned from behind
 * @param b0      >= 0, default 0.05
 * @returns       0..1
 *
 * Source: A. F. Souka and H. H. Safwat, "Determination of the optimum orientations for the
 * double-exposure, flat-plate collector and its reflectors," Solar Energy, vol. 10, pp. 170-174,
 * 1966; later ASHRAE Standard 93.
 */
export function beamModifier(cosine: number, b0 = GLASS_B0): number {
  if (cosine <= 0) return 0
  return Math.max(0, 1 - b0 * (1 / cosine - 1))
}

/**
 * The same for light from the sky and from the ground: one constant, the beam's value at 60°,
 * which is 1 - b0. For the sky 60° holds within 4° at tilts to 90°; light from the ground comes
 * flatter to a shallow roof and loses more, of a small amount.
 *
 * @param b0  >= 0, default 0.05
 *
 * Source: M. J. Brandemuehl and W. A. Beckman, "Transmission of diffuse radiation through CPC and
 * flat plate collector glazings," Solar Energy, vol. 24, pp. 511-513, 1980.
 */
export function diffuseModifier(b0 = GLASS_B0): number {
  return beamModifier(Math.cos(60 * RAD), b0)
}

// How far apart colours look: in grey print, and to eyes that see few of them.

type Rgb = [number, number, number]

/** Linear light of `#rrggbb`, 0..1 each. */
function linear(hex: string): Rgb {
  if (!/^#[0-9a-f]{6}$/i.test(hex)) throw new Error(`a colour like #14365c, got ${hex}`)
  return [1, 3, 5].map((at) => {
    const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255
    // WCAG 2.1 (W3C Recommendation, 2018), "relative luminance"; sRGB after IEC 61966-2-1.
    return part <= 0.03928 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  }) as Rgb
}

/** WCAG 2.1, "relative luminance": L = 0.2126 R + 0.7152 G + 0.0722 B. */
function luminance([r, g, b]: Rgb): number {
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

/** WCAG 2.1, "contrast ratio": (L1 + 0.05) / (L2 + 0.05), 1..21. What is left in grey print. */
export function contrast(a: string, b: string): number {
  const [dark, light] = [a, b].map((hex) => luminance(linear(hex))).sort((x, y) => x - y)
  return (light! + 0.05) / (dark! + 0.05)
}

/**
 * Machado, Oliveira and Fernandes, "A physiologically-based model for simulation of color vision
 * deficiency", IEEE TVCG 15 (6), 2009, severity 1.0. The numbers are from memory; each row sums
 * to 1, so that grey stays grey, which is checked.
 */
export const DEFICIENCIES = {
  'no red': [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  'no green': [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  'no blue': [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
} as const

/** CIE 1976 L*a*b*, white D65; sRGB to XYZ as of IEC 61966-2-1. */
function lab([r, g, b]: Rgb): Rgb {
  const x = (0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505
  const y = 0.2126 * r + 0.7152 * g + 0.0722 * b
  const z = (0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089
  const f = (t: number) => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29)
  return [116 * f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))]
}

/** CIE 1976 colour difference, dE = |Lab1 - Lab2|; about 2.3 is just seen (Mahy et al. 1994). */
export function difference(a: string, b: string, sees?: keyof typeof DEFICIENCIES): number {
  const seen = (hex: string): Rgb => {
    const rgb = linear(hex)
    if (sees === undefined) return lab(rgb)
    const out = DEFICIENCIES[sees].map((row) =>
      Math.min(1, Math.max(0, row[0] * rgb[0] + row[1] * rgb[1] + row[2] * rgb[2])),
    )
    return lab(out as Rgb)
  }
  const [p, q] = [seen(a), seen(b)]
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])
}

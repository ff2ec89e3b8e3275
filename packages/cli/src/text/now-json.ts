// `now` as a script reads it: every minute as a time.

import {
  type HandStart,
  isoUtc,
  type Lasts,
  type NowAnswer,
  type NowUnderSky,
  type Prepared,
} from '@tideover/core'

type Iso = (minute: number | null) => string | null

export function nowJson({ calendar }: Pick<Prepared, 'calendar'>, answer: NowAnswer): unknown {
  const { minute, skies, ...rest } = answer
  const iso: Iso = (at) => (at === null ? null : isoUtc(calendar, minute + at))
  return {
    ...rest,
    at: iso(0),
    skies: Object.fromEntries(
      Object.entries(skies).map(([sky, under]) => [sky, skyJson(under, iso)]),
    ),
  }
}

function skyJson({ lasts, batteryAlone, start, startInHours }: NowUnderSky, iso: Iso): unknown {
  return {
    lasts: lastsJson(lasts, iso),
    batteryAlone: batteryAlone === null ? null : lastsJson(batteryAlone, iso),
    start: start === null ? null : startJson(start, iso),
    startInHours:
      startInHours === null
        ? null
        : { ...startJson(startInHours, iso), goAt: iso(startInHours.goAt) },
  }
}

function lastsJson(lasts: Lasts, iso: Iso): object {
  const { hours, givesOutAt, first, loads, comfortOffAt, sunAt, sunCarriesAt, events } = lasts
  return {
    hours,
    atLeastHours: givesOutAt === null,
    givesOutAt: iso(givesOutAt),
    first: first === null ? null : { name: first.name, lostAt: iso(first.lostAt) },
    loads: loads.map((load) => ({ ...load, lostAt: iso(load.lostAt) })),
    comfortOffAt: iso(comfortOffAt),
    sunAt: iso(sunAt),
    sunCarriesAt: iso(sunCarriesAt),
    generatorOnAt: iso(lasts.generatorOnAt),
    events: events.map(({ minute, local, id, text }) => ({ time: iso(minute), local, id, text })),
  }
}

function startJson(start: HandStart, iso: Iso): object {
  const { at, powerAt, nextLossAt, fuelOutAt, fuelLeftL, ranHours, burntL } = start
  return {
    at: iso(at),
    powerAt: iso(powerAt),
    nextLossAt: iso(nextLossAt),
    fuelOutAt: iso(fuelOutAt),
    ...{ fuelLeftL, ranHours, burntL },
  }
}

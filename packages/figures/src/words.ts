// How figures say hours and shares.

/** `6 h 8 min`, `35 min`, `48 h`, from three days `4 days`. */
export function durationText(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), Math.floor(minutes % 60)]
  if (minutes >= 3 * 1440 && minutes % 1440 === 0) return `${minutes / 1440} days`
  if (hours === 0) return `${rest} min`
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`
}

/**
 * Hours of a ride, rounded down: `26`; `over 72` where it was followed no further; `–` where null.
 *
 * @param horizon  how far it was followed. [h]
 */
export function hoursDown(hours: number | null, horizon: number): string {
  if (hours === null) return '–'
  return hours >= horizon ? `over ${Math.floor(horizon)}` : String(Math.floor(hours))
}

/** A share as whole per cent, rounded down; null where it is not known. */
export function percentDown(share: number | null): number | null {
  return share === null || Number.isNaN(share) ? null : Math.floor(share * 100 + 1e-9)
}

/** Lines of at most so many letters, broken at spaces: plotly does not break lines itself. */
export function wrapped(text: string, letters: number): string {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const line = lines.at(-1)
    if (line === undefined || line.length + 1 + word.length > letters) lines.push(word)
    else lines[lines.length - 1] = `${line} ${word}`
  }
  return lines.join('<br>')
}

/** At most so many letters, the last an ellipsis where there were more. */
export function shortened(text: string, letters: number): string {
  const all = [...text]
  return all.length > letters ? `${all.slice(0, letters - 1).join('')}…` : text
}

// Text at the width of a terminal.

/** Breaks at spaces, but not between a number and its unit. */
export function wrap(text: string, width = 80): string {
  const lines: string[] = ['']
  for (const word of text.replace(/(\d) (?=%|h\b|kW|kVA|min\b|l\b|°C)/g, '$1\u00a0').split(' ')) {
    const line = lines.at(-1) ?? ''
    if (line !== '' && line.length + 1 + word.length > width) lines.push(word)
    else lines[lines.length - 1] = line === '' ? word : `${line} ${word}`
  }
  return lines.join('\n').replaceAll('\u00a0', ' ')
}

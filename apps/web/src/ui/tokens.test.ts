import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const css = readFileSync(fileURLToPath(new URL('tokens.css', import.meta.url)), 'utf8')

function tokensOf(scheme: string): Record<string, string> {
  const block = css.split(`data-mantine-color-scheme='${scheme}'] {`)[1]?.split('}')[0] ?? ''
  return Object.fromEntries([...block.matchAll(/--([\w-]+): (#[0-9a-f]{6})/g)].map((m) => [m[1]!, m[2]!]))
}

/** Relative luminance, WCAG 2.2 definition. */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!
}

function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y)
  return (high! + 0.05) / (low! + 0.05)
}

describe.each(['light', 'dark'])('colour tokens, %s', (scheme) => {
  const token = tokensOf(scheme)
  const grounds = ['ground', 'panel', 'sunk']
  const states = ['accent', 'inside', 'under', 'over', 'not-proven']

  it.each(['ink', 'ink-soft', ...states].flatMap((text) => grounds.map((ground) => [text, ground])))(
    '%s is readable text on %s (4.5 : 1)',
    (text, ground) => expect(contrast(token[text]!, token[ground]!)).toBeGreaterThanOrEqual(4.5),
  )

  it.each(states)('%s, ink and soft ink are readable on the soft ground of %s (4.5 : 1)', (state) => {
    for (const text of [state, 'ink', 'ink-soft'])
      expect(contrast(token[text]!, token[`${state}-soft`]!)).toBeGreaterThanOrEqual(4.5)
  })

  it('text on a filled button is readable in rest and hover (4.5 : 1)', () => {
    expect(contrast(token['on-accent']!, token.accent!)).toBeGreaterThanOrEqual(4.5)
    expect(contrast(token['on-accent']!, token['accent-strong']!)).toBeGreaterThanOrEqual(4.5)
    expect(contrast(token['on-accent']!, token.over!)).toBeGreaterThanOrEqual(4.5)
  })

  it('field borders and the focus ring stand out from every ground (3 : 1)', () => {
    for (const ground of grounds) {
      expect(contrast(token['rule-strong']!, token[ground]!)).toBeGreaterThanOrEqual(3)
      expect(contrast(token.accent!, token[ground]!)).toBeGreaterThanOrEqual(3)
    }
  })
})

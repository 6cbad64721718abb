import { describe, expect, it } from 'vitest'
import { figureText } from './figure-text.ts'

describe('figureText(value, unit, digits, own)', () => {
  it('shows lengths in the person’s unit, one decimal finer than a reading where they need it', () => {
    expect(figureText(52.5, 'µm', 3, 'mm')).toBe('0.0525 mm')
    expect(figureText(2.451, 'µm', 3, 'um')).toBe('2.5 µm')
    expect(figureText(25.4, 'µm', 3, 'thou')).toBe('1.0 thou')
    expect(figureText(120, 'µm', 3, 'mm')).toBe('0.120 mm')
  })

  it('rounds to significant digits, but not whole numbers', () => {
    expect(figureText(59_845.4, 'h', 3, 'mm')).toBe('59\u00a0800\u00a0h')
    expect(figureText(1234, '', 3, 'mm')).toBe('1\u00a0234')
    expect(figureText(5.29412, '°', 3, 'mm')).toBe('5.29°')
    expect(figureText(-20, '°C', 3, 'mm')).toBe('−20\u00a0°C')
  })
})

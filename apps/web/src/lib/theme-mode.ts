import { localStorageColorSchemeManager, useComputedColorScheme, useMantineColorScheme } from '@mantine/core'
import { useEffect } from 'react'

export type ThemeMode = 'light' | 'dark' | 'auto'

/** Keeps the chosen theme; the key is read by public/theme-mode.js before the first paint. */
export const themeModeManager = localStorageColorSchemeManager({ key: 'shaftbook.theme' })

const barColour = { light: '#F6F4EE', dark: '#15191C' } as const

/** The person's theme choice and the theme shown now; keeps the browser's bar in the colour of the ground. */
export function useThemeMode(): { mode: ThemeMode; shown: 'light' | 'dark'; setMode: (mode: ThemeMode) => void } {
  const { colorScheme, setColorScheme } = useMantineColorScheme()
  const shown = useComputedColorScheme('light', { getInitialValueInEffect: false })
  useEffect(() => {
    document.querySelector('meta[name="theme-color"]')?.setAttribute('content', barColour[shown])
  }, [shown])
  return { mode: colorScheme, shown, setMode: setColorScheme }
}

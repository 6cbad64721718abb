import {
  createTheme,
  type ButtonProps,
  type CSSVariablesResolver,
  type DrawerProps,
  type MantineColorsTuple,
  type ModalProps,
  type VariantColorsResolver,
} from '@mantine/core'

// Mantine wants ten shades; ours all point at one token, which already knows light from dark.
const ten = (token: string) => Array.from({ length: 10 }, () => `var(--${token})`) as unknown as MantineColorsTuple

/** Colours by role: `accent` for ordinary acts, `over` for acts that destroy or refuse. */
const variantColors: VariantColorsResolver = ({ color, variant }) => {
  const role = color === 'over' ? 'over' : 'accent'
  const own = `var(--${role})`
  const hover = role === 'accent' ? 'var(--accent-strong)' : `color-mix(in srgb, ${own} 88%, var(--ink))`
  const soft = `var(--${role}-soft)`
  const line = '1px solid transparent'
  switch (variant) {
    case 'filled':
      return { background: own, hover, color: 'var(--on-accent)', border: line }
    case 'light':
      return { background: soft, hover: soft, color: own, border: line }
    case 'outline':
      return { background: 'transparent', hover: soft, color: own, border: `1px solid ${own}` }
    case 'default':
      return {
        background: 'var(--panel)',
        hover: 'var(--sunk)',
        color: 'var(--ink)',
        border: '1px solid var(--rule-strong)',
      }
    default:
      return { background: 'transparent', hover: soft, color: own, border: line }
  }
}

/** Mantine's own variables, said in our tokens. */
export const cssVariables: CSSVariablesResolver = () => {
  const variables = {
    '--mantine-color-body': 'var(--panel)',
    '--mantine-color-text': 'var(--ink)',
    '--mantine-color-bright': 'var(--ink)',
    '--mantine-color-dimmed': 'var(--ink-soft)',
    '--mantine-color-placeholder': 'var(--ink-soft)',
    '--mantine-color-anchor': 'var(--accent)',
    '--mantine-color-error': 'var(--over)',
    '--mantine-color-success': 'var(--inside)',
    '--mantine-color-default': 'var(--panel)',
    '--mantine-color-default-hover': 'var(--sunk)',
    '--mantine-color-default-color': 'var(--ink)',
    '--mantine-color-default-border': 'var(--rule-strong)',
    '--mantine-color-disabled': 'var(--sunk)',
    '--mantine-color-disabled-color': 'var(--ink-soft)',
    '--mantine-color-disabled-border': 'var(--rule)',
    '--mantine-color-accent-filled': 'var(--accent)',
    '--mantine-color-accent-filled-hover': 'var(--accent-strong)',
    '--mantine-color-accent-light': 'var(--accent-soft)',
    '--mantine-color-accent-light-color': 'var(--accent)',
    '--mantine-primary-color-filled': 'var(--accent)',
    '--mantine-primary-color-filled-hover': 'var(--accent-strong)',
    '--mantine-primary-color-contrast': 'var(--on-accent)',
  }
  return { variables: {}, light: variables, dark: variables }
}

const sizes = {
  xs: 'var(--text-s)',
  sm: 'var(--text-m)',
  md: 'var(--text-m)',
  lg: 'var(--text-l)',
  xl: 'var(--text-xl)',
  touch: 'var(--text-l)',
}

// A dialog's <header> would be read as a second banner of the page.
const overPage = {
  shadow: 'lg',
  overlayProps: { backgroundOpacity: 0.5 },
  closeButtonProps: { 'aria-label': 'Close' },
  attributes: { header: { role: 'presentation' } },
} as const

export const theme = createTheme({
  primaryColor: 'accent',
  colors: { accent: ten('accent'), over: ten('over') },
  variantColorResolver: variantColors,
  fontFamily: 'var(--font)',
  fontFamilyMonospace: 'var(--font)',
  fontSizes: sizes,
  spacing: { xs: '4px', sm: '8px', md: '12px', lg: '16px', xl: '24px' },
  radius: { xs: '4px', sm: '4px', md: '4px', lg: '4px', xl: '4px' },
  defaultRadius: 'sm',
  cursorType: 'pointer',
  focusRing: 'auto',
  respectReducedMotion: true,
  shadows: {
    xs: 'none',
    sm: 'none',
    md: 'var(--float-shadow)',
    lg: 'var(--float-shadow)',
    xl: 'var(--float-shadow)',
  },
  headings: {
    fontFamily: 'var(--font)',
    fontWeight: '600',
    sizes: {
      h1: { fontSize: 'var(--text-xl)', lineHeight: '1.25' },
      h2: { fontSize: 'var(--text-l)', lineHeight: '1.3' },
      h3: { fontSize: 'var(--text-m)', lineHeight: '1.4' },
    },
  },
  // Only the types of the components: what a page does not use is not loaded with it.
  components: {
    Button: { defaultProps: { size: 'sm' } satisfies Partial<ButtonProps> },
    Modal: { defaultProps: { ...overPage, centered: true } satisfies Partial<ModalProps> },
    Drawer: { defaultProps: overPage satisfies Partial<DrawerProps> },
  },
})

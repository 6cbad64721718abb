import '@fontsource-variable/source-sans-3/wght.css'
import './ui/mantine-styles.ts'
import './ui/tokens.css'
import './ui/base.css'
import './ui/mantine.css'
import { MantineProvider } from '@mantine/core'
import { QueryCache, QueryClient, QueryClientProvider } from '@tanstack/react-query'
import { RouterProvider } from '@tanstack/react-router'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { NoAnswerError } from './api/problem-error.ts'
import { watchNewVersion } from './lib/new-version.ts'
import { themeModeManager } from './lib/theme-mode.ts'
import { followDevice } from './session/follow-device.ts'
import { makeRouter } from './router.tsx'
import { leadToSignIn } from './session/session-over.ts'
import { LinkProvider } from './ui/link.tsx'
import { NoticeProvider } from './ui/notice.tsx'
import { cssVariables, theme } from './ui/theme.ts'

const queryClient = new QueryClient({
  queryCache: new QueryCache({ onError: (error) => leadToSignIn(error, router, queryClient) }),
  defaultOptions: {
    // What the service has refused is not asked again; only a silent network gets a second try.
    // Without a network the device may have the answer, so everything is asked at once.
    queries: {
      networkMode: 'always',
      staleTime: 15_000,
      retry: (failed, error) => failed === 0 && error instanceof NoAnswerError,
    },
    // Without a network a write fails with its sentence instead of waiting unseen.
    mutations: { networkMode: 'always' },
  },
})
const router = makeRouter(queryClient)
followDevice(queryClient)
watchNewVersion()
const followLink = (href: string) => router.history.push(href)

createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <MantineProvider
      theme={theme}
      cssVariablesResolver={cssVariables}
      colorSchemeManager={themeModeManager}
      defaultColorScheme="auto"
    >
      <QueryClientProvider client={queryClient}>
        <NoticeProvider>
          <LinkProvider value={followLink}>
            <RouterProvider router={router} />
          </LinkProvider>
        </NoticeProvider>
      </QueryClientProvider>
    </MantineProvider>
  </StrictMode>,
)

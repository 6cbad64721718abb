import { buildWeb } from '../../apps/ops/src/build-web.ts'

/** The browser tests run on the dashboard as it is served. */
export default async function setup(): Promise<void> {
  await buildWeb()
}

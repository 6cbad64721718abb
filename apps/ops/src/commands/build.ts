import { buildWeb } from '../build-web.ts'
import { runCommand } from '../run-command.ts'

await runCommand(async (stopped) => {
  console.log((await buildWeb(stopped)) ? 'The dashboard is built.' : 'The dashboard is built already.')
})

import { readEnvironment } from '../environment.ts'
import { startEmbeddedPostgres } from '../embedded-postgres.ts'
import { OperatorError } from '../operator-error.ts'
import { runCommand, unlessStopped } from '../run-command.ts'

// The embedded database alone, for a look with other tools.
await runCommand(async (stopped) => {
  const { SHAFTBOOK_DATA_DIR: dataFolder } = readEnvironment(process.env)
  const postgres = await startEmbeddedPostgres({ dataFolder, onStep: console.log })
  try {
    console.log(`PostgreSQL 18 in ${dataFolder}\n${postgres.adminUrl}\n${postgres.ownerUrl}\nCtrl-C stops it.`)
    const lastWords = await unlessStopped(stopped, postgres.ended)
    throw new OperatorError(`The database has ended by itself. Its last words:\n${lastWords}`)
  } finally {
    await postgres.stop()
  }
})

import { openDatabase } from '../database.ts'
import { readEnvironment } from '../environment.ts'
import { prepareDatabase } from '../prepare-database.ts'
import { runCommand, unlessStopped } from '../run-command.ts'

await runCommand(async (stopped) => {
  const database = await openDatabase(readEnvironment(process.env), console.log)
  try {
    const applied = await unlessStopped(stopped, prepareDatabase(database.ownerUrl, console.log))
    console.log(
      `${database.description}: ${applied.length === 0 ? 'up to date' : `${applied.length} migrations applied`}`,
    )
  } finally {
    await database.stop()
  }
})

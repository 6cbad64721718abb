import type { Client } from 'pg'
import { withClient } from './database-client.ts'

/**
 * Makes, where missing, the database `shaftbook` and its two roles: shaftbook_owner, who owns and migrates it and makes
 * roles, and shaftbook_app, who serves and is bound by row-level security. Safe to repeat: a start may have been killed
 * half way through an earlier time.
 * @param adminUrl the cluster's superuser
 */
export async function ensureRoles(adminUrl: string, passwords: { owner: string; app: string }): Promise<void> {
  await withClient(adminUrl, async (admin) => {
    await ensureLogin(admin, 'shaftbook_app', passwords.app, 'nosuperuser nobypassrls nocreatedb nocreaterole')
    await ensureLogin(admin, 'shaftbook_owner', passwords.owner, 'nosuperuser nobypassrls nocreatedb createrole')
    await admin.query('grant shaftbook_app to shaftbook_owner with admin option')
    const { rowCount } = await admin.query("select from pg_database where datname = 'shaftbook'")
    if (rowCount === 0) await admin.query('create database shaftbook owner shaftbook_owner')
  })
}

async function ensureLogin(admin: Client, role: string, password: string, rights: string): Promise<void> {
  const { rowCount } = await admin.query('select from pg_roles where rolname = $1', [role])
  const verb = rowCount === 0 ? 'create' : 'alter'
  await admin.query(`${verb} role ${role} with login ${rights} password ${admin.escapeLiteral(password)}`)
}

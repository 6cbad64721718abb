import type { Role } from '@shaftbook/contract/roles'

/** What each role is called, and what it does. */
export const roleWords: Readonly<Record<Role, { label: string; does: string }>> = {
  technician: { label: 'Technician', does: 'logs mounts, removals, greasings and meter readings' },
  stores: { label: 'Stores', does: 'keeps parts and kits' },
  engineer: { label: 'Engineer', does: 'does both, and keeps the register, plans, charts and flags' },
  manager: { label: 'Manager', does: 'does all of it, lets people in and sets the rules of the site' },
}

export const roleChoices = (Object.keys(roleWords) as Role[]).map((value) => ({ value, label: roleWords[value].label }))

import { z } from 'zod'

export const Role = z.enum(['technician', 'stores', 'engineer', 'manager'])
export type Role = z.infer<typeof Role>

/** Everybody of the site reads everything of the site. */
export const everyone = Role.options
/** Who works at the shaft: logs mounts, removals, greasings and meter readings. */
export const shaftWork = ['technician', 'engineer', 'manager'] as const satisfies readonly Role[]
/** Who keeps parts and kits. */
export const storesWork = ['stores', 'engineer', 'manager'] as const satisfies readonly Role[]
/** Who keeps the register, plans and charts, and decides on flags. */
export const engineering = ['engineer', 'manager'] as const satisfies readonly Role[]
/** Who admits people. */
export const management = ['manager'] as const satisfies readonly Role[]

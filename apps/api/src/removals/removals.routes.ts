import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'

export function removalRoutes(_app: FastifyInstance, _context: Context): void {}

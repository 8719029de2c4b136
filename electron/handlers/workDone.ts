import { bad } from '../../shared/problem.ts'
import type { Handler } from './context.ts'

const later = () => bad({ code: 'refused', field: '', message: 'this isn’t built yet' })

export const listWorkDone: Handler<'workDone.list'> = later
export const addWorkDone: Handler<'workDone.add'> = later
export const removeWorkDone: Handler<'workDone.remove'> = later
export const workRecord: Handler<'workDone.record'> = later

import { bad } from '../../shared/problem.ts'
import type { Handler } from './context.ts'

const later = () => bad({ code: 'refused', field: '', message: 'this isn’t built yet' })

export const priceBook: Handler<'prices.book'> = later
export const addItem: Handler<'prices.addItem'> = later
export const changeItem: Handler<'prices.changeItem'> = later
export const retireItem: Handler<'prices.retireItem'> = later
export const addSupplier: Handler<'prices.addSupplier'> = later
export const changeSupplier: Handler<'prices.changeSupplier'> = later
export const keepSupply: Handler<'prices.supply'> = later
export const previewRise: Handler<'prices.preview'> = later
export const applyRise: Handler<'prices.apply'> = later
export const listRises: Handler<'prices.rises'> = later
export const undoRise: Handler<'prices.undo'> = later

import { computed } from 'vue'
import { currencySigns, readMoney, writeMoney, writeSum } from '../../shared/pricing/moneyText.ts'
import { pence, type Pence } from '../../shared/pricing/pence.ts'
import { useSettingsStore } from '../stores/settings.ts'

/** Sums in the workshop's own currency, read and written. */
export function useMoney() {
  const settings = useSettingsStore()
  const money = computed(() => settings.summary?.settings.money)
  const currency = computed(() => money.value?.currency ?? 'GBP')
  const sign = computed(() => currencySigns[currency.value])
  const taxName = computed(() => money.value?.tax.name || 'Tax')
  const registered = computed(() => money.value?.tax.registered ?? true)

  /** A sum as it is printed: £1,234.50. */
  const write = (amount: number): string => writeMoney(pence(amount), currency.value)
  /** A sum for a column of figures: 1,234.50. */
  const figures = (amount: number): string => writeSum(pence(amount))
  /** A sum as typed; undefined where it can't be read. */
  function read(text: string): Pence | undefined {
    const found = readMoney(text, currency.value)
    return found.ok ? found.value : undefined
  }
  const problemOf = (text: string): string | undefined => {
    const found = readMoney(text, currency.value)
    return found.ok ? undefined : found.problems[0]?.message
  }
  return { currency, sign, taxName, registered, write, figures, read, problemOf }
}

import { computed } from 'vue'
import { writeInches, writeLength, writeShortMm } from '../../shared/units/writeLength.ts'
import { useSettingsStore } from '../stores/settings.ts'

/** Lengths of timber in the workshop's own unit: write is bare for a drawing (1830), long has its unit (1830 mm). */
export function useSawn() {
  const settings = useSettingsStore()
  const unit = computed(() => settings.summary?.settings.unit ?? 'mm')
  const write = (mm: number): string => (unit.value === 'mm' ? writeShortMm(mm) : writeInches(mm))
  const long = (mm: number): string => writeLength(mm, unit.value)
  return { unit, write, long }
}

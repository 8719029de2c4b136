import { inWords } from '../language/said.ts'
import { computed, ref } from 'vue'
import { pictureOf, type Picture } from '../../shared/drawing/picture.ts'
import { viewsOf } from '../../shared/drawing/viewsOf.ts'
import { drawingOf, mainViews, viewWords, type View } from '../gate/views.ts'
import { useGateStore } from '../stores/gate.ts'

/** Widths a picture may be given, mm. */
export const pictureWidths = { least: 60, most: 400, usual: 180 }

/** The picture being put together for a customer: which views, with sizes or without, how wide. */
export function usePictures() {
  const gate = useGateStore()
  const chosen = ref<ReadonlySet<View>>(new Set<View>(['face']))
  const sizes = ref(true)
  const width = ref(pictureWidths.usual)

  const views = computed<View[]>(() =>
    gate.spec && gate.made ? [...mainViews, ...viewsOf(gate.spec, gate.made)] : [],
  )
  const shown = computed(() => views.value.filter((view) => chosen.value.has(view)))
  function turn(view: View) {
    const now = new Set(chosen.value)
    if (!now.delete(view)) now.add(view)
    chosen.value = now
  }
  /** The picture as chosen; null while no view is, or the gate can't be drawn. */
  const picture = computed<Picture | null>(() => {
    const { spec, made: design, drawings, unit } = gate
    if (!spec || !design || !drawings) return null
    const drawn = shown.value.flatMap((view) => drawingOf(view, drawings, { spec, design, unit }) ?? [])
    return drawn.length === 0
      ? null
      : pictureOf(drawn.map(inWords), { width: width.value, sizes: sizes.value, unit })
  })
  /** What the views shown are called, for its name: 'face and section'. */
  const called = computed(() => shown.value.map((view) => viewWords[view].toLowerCase()).join(' and '))
  return { chosen, sizes, width, views, shown, turn, picture, called }
}

export type Pictures = ReturnType<typeof usePictures>

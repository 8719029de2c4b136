import { ref, watch } from 'vue'

/** How long the stage of a long work has gone on, ms: it begins anew with each stage. */
export function useStageClock(stage: () => string | undefined): () => number {
  const began = ref(performance.now())
  watch(stage, () => (began.value = performance.now()))
  return () => performance.now() - began.value
}

/** A guess of what is left of a stage, ms; undefined before a second and its least part have gone by, and once it is done. */
export function guessLeft(
  { done, of }: { done: number; of: number },
  elapsedMs: number,
  least: number,
): number | undefined {
  return done < least || done >= of || elapsedMs < 1000 ? undefined : (elapsedMs / done) * (of - done)
}

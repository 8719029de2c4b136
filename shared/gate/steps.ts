/** One step in the order of making. cautions stand beside the step where the danger is. */
export type Step = { title: string; text: string; cautions: string[] }
